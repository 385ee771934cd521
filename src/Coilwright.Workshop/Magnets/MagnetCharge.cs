using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Magnets;

/// <summary>The charge of a piece's magnets as it was said last.</summary>
/// <param name="Level">To what.</param>
/// <param name="Charger">With which charger or by what means; empty when nobody said.</param>
/// <param name="Why">Why it was done again; empty for the step itself.</param>
/// <param name="Person">Who did it.</param>
/// <param name="TimeUtc">When.</param>
public sealed record MagnetCharge(MagnetLevel Level, string Charger, string Why, string Person, DateTimeOffset TimeUtc)
{
    /// <summary>What is told of a piece whose charge nobody said.</summary>
    public const string Unknown = "charge not recorded";

    /// <summary>In a line: "knocked down to 80 % of full, with coil charger 2".</summary>
    public string Words => Level.Done + (Charger.Length > 0 ? $", with {Charger}" : "") + (Why.Length > 0 ? $"; {Why}" : "");

    /// <summary>How the piece's magnets stand: the last charge that was not undone; null when nobody said one.</summary>
    public static MagnetCharge? Of(PieceSnapshot life) =>
        life.History.InForce.Select(one => one.ChargeSaid).LastOrDefault(charge => charge is not null);

    /// <summary>The piece's charge in a line for screens and papers; empty for a recipe without magnets.</summary>
    public static string Told(PieceSnapshot life) => Of(life)?.Words ?? (ChargeRule.HasMagnets(life.Recipe) ? Unknown : "");
}
