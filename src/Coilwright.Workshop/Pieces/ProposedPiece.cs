using System.Globalization;
using Coilwright.Physics;

namespace Coilwright.Workshop.Pieces;

/// <summary>Coils that are proposed to go together.</summary>
/// <param name="Coils">One for each coil of the recipe, in its order.</param>
/// <param name="Difference">How far apart they are, or from the offset that is meant, a part of the smaller value; null where nothing is
/// paired.</param>
/// <param name="HumLevelDb">Hum left against the same coils adding, dB; null where nothing is paired.</param>
public sealed record ProposedPiece(IReadOnlyList<CoilAtHand> Coils, double? Difference, Estimate? HumLevelDb)
{
    /// <summary>The hum left in words: equal counts say no more than how well a counter counts.</summary>
    public string HumWords =>
        HumLevelDb switch
        {
            null => "–",
            { Value: < -100 } level => string.Create(CultureInfo.InvariantCulture, $"below {level.High:0} dB").Replace('-', '−'),
            { } level => string.Create(CultureInfo.InvariantCulture, $"{level.Value:0} dB ({level.Low:0} to {level.High:0})")
                .Replace('-', '−'),
        };
}
