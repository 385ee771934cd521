namespace Coilwright.Workshop.Polarity;

/// <summary>A position of a selector: which coils sound in it, and which of those with their ends exchanged.</summary>
/// <param name="Name">What the shop calls it, for example "2: neck and middle".</param>
/// <param name="Sounding">Names of the coils that sound.</param>
/// <param name="Exchanged">Names of those among them whose ends are exchanged in this position.</param>
public sealed record SwitchPosition(string Name, IReadOnlyList<string> Sounding, IReadOnlyList<string> Exchanged)
{
    /// <summary>The answer in this position.</summary>
    /// <param name="coils">Every coil of the instrument; those that the position names must be among them.</param>
    public PhaseAnswer Answer(IReadOnlyList<CoilSigns> coils) =>
        PhaseRule.Of([
            .. Sounding
                .Select(name => coils.First(coil => coil.Name == name))
                .Select(coil => Exchanged.Contains(coil.Name) ? coil.Reversed() : coil),
        ]);
}
