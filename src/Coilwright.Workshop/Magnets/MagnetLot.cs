using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Magnets;

/// <summary>The poles of one lot of magnets at one distance of the probe: readings at different distances cannot be compared.</summary>
/// <param name="Lot">The lot, as the shop writes it.</param>
/// <param name="JigM">Distance of the probe, m.</param>
/// <param name="Pieces">Pieces read at it that hold magnets of the lot.</param>
public sealed record MagnetLot(string Lot, double JigM, IReadOnlyList<MagnetLine> Pieces)
{
    /// <summary>Two distances are one jig when they agree to a hundredth of a millimetre; our assumption.</summary>
    private const double JigStepM = 1e-5;

    private PoleReading All => new([.. Pieces.SelectMany(line => line.Poles!.PolesT)], JigM);

    /// <summary>Weakest and strongest pole, T.</summary>
    public (double LowT, double HighT) Range => (All.PolesT.Min(Math.Abs), All.PolesT.Max(Math.Abs));

    /// <summary>Mean strength of its poles, T.</summary>
    public double MeanT => All.PolesT.Average(Math.Abs);

    /// <summary>Strongest less weakest pole over their mean.</summary>
    public double Spread => All.Spread;

    /// <summary>Pieces with a pole that stands the wrong way.</summary>
    public IReadOnlyList<MagnetLine> Stopped => [.. Pieces.Where(line => line.Reversed.Count > 0)];

    /// <summary>The lots among pieces, those read most first.</summary>
    public static IReadOnlyList<MagnetLot> Among(IReadOnlyList<MagnetLine> lines) =>
        [
            .. lines
                .Where(line => line.Poles is { PolesT.Count: > 0 })
                .SelectMany(line => line.Lots.Select(lot => (Lot: lot, Line: line)))
                .GroupBy(pair => (pair.Lot.ToUpperInvariant(), Math.Round(pair.Line.Poles!.JigDistanceM / JigStepM)))
                .Select(same => new MagnetLot(same.First().Lot, same.First().Line.Poles!.JigDistanceM, [.. same.Select(pair => pair.Line)]))
                .OrderByDescending(lot => lot.Pieces.Count),
        ];
}
