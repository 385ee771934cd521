namespace Coilwright.Workshop.Magnets;

/// <summary>What a person enters of the charge of a piece's magnets, as typed; all of it may be left empty.</summary>
/// <param name="Level">"full", a share of full such as "80 %", or the field over the poles such as "900 G".</param>
/// <param name="Jig">Distance of the probe for a field; 1 mm unless typed.</param>
/// <param name="Charger">With which charger or by what means; may stay empty.</param>
public sealed record ChargeEntry(string Level, string Jig = "", string Charger = "")
{
    /// <summary>Nothing was said.</summary>
    public static ChargeEntry Nothing { get; } = new("");

    /// <summary>True when nothing was said at all.</summary>
    public bool IsEmpty => Level.Trim().Length == 0 && Jig.Trim().Length == 0 && Charger.Trim().Length == 0;
}
