using System.Globalization;

namespace Coilwright.Workshop.Magnets;

/// <summary>What a recipe's magnet step asks of the charge, and whether what was entered meets it.</summary>
/// <param name="Level">The level wanted.</param>
/// <param name="Tolerance">Largest deviation either way, a part of the level; null when the recipe states none.</param>
public sealed record RequiredCharge(MagnetLevel Level, double? Tolerance)
{
    /// <summary>The level with its tolerance: "80 % of full ±3 %".</summary>
    public string Words =>
        Level.Words + (Tolerance is { } part ? string.Create(CultureInfo.InvariantCulture, $" ±{100 * part:0.##} %") : "");
}
