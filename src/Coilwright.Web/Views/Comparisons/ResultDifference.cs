using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Comparisons;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Web.Views.Comparisons;

/// <summary>
/// What differs in the results of designs on one load: each value with its interval, and its change from the first design with the change's
/// own.
/// </summary>
internal static class ResultDifference
{
    private static readonly Quantity[] s_rows =
    [
        Quantity.DcResistance,
        Quantity.Inductance,
        Quantity.Find(QuantityKey.Capacitance)!,
        Quantity.LoadedPeak,
        Quantity.Find(QuantityKey.LoadedPeakGain)!,
        Quantity.Find(QuantityKey.Minus3Db)!,
        Quantity.Find(QuantityKey.Output)!,
        Quantity.Find(QuantityKey.Hum)!,
        Quantity.Find(QuantityKey.Noise)!,
    ];

    /// <summary>Results that are alike as far as the intervals tell, by name.</summary>
    /// <param name="lines">Each design against the first; null for a measured one.</param>
    public static IReadOnlyList<string> Alike(IReadOnlyList<IReadOnlyList<ComparisonLine>?> lines) =>
        lines.Count < 2 ? [] : [.. s_rows.Where(row => Of(row, lines).Length > 0 && !Differs(row, lines)).Select(row => row.FigureName)];

    private static ComparisonLine[] Of(Quantity row, IReadOnlyList<IReadOnlyList<ComparisonLine>?> lines) =>
        [.. lines.OfType<IReadOnlyList<ComparisonLine>>().SelectMany(of => of.Where(line => line.Name == row.Key))];

    /// <summary>A measured design has no intervals: it is told in every row.</summary>
    private static bool Differs(Quantity row, IReadOnlyList<IReadOnlyList<ComparisonLine>?> lines) =>
        lines.Contains(null) || Of(row, lines).Any(line => line.Differs);

    /// <summary>A row each result that differs.</summary>
    /// <param name="designs">The designs, the pinned one first.</param>
    /// <param name="load">What they hang on.</param>
    /// <param name="lines">Each design against the first; null for a measured one.</param>
    public static IReadOnlyList<(string Name, IReadOnlyList<string> Values)> Between(
        IReadOnlyList<ComparedDesign> designs,
        LoadCircuit load,
        IReadOnlyList<IReadOnlyList<ComparisonLine>?> lines
    ) =>
        designs.Count < 2 || lines.Count < designs.Count
            ? []
            :
            [
                .. s_rows
                    .Where(row => Of(row, lines).Length > 0 && Differs(row, lines))
                    .Select(row =>
                        (
                            row.FigureName,
                            (IReadOnlyList<string>)
                                [
                                    .. designs.Select(
                                        (design, i) => Cell(row, design, load, lines[i], changed: i > 0 && designs[0].Solved is not null)
                                    ),
                                ]
                        )
                    ),
            ];

    private static string Cell(Quantity row, ComparedDesign design, LoadCircuit load, IReadOnlyList<ComparisonLine>? lines, bool changed)
    {
        if (lines is null)
        {
            return Measured(row, design, load) is { } value ? ForecastNumberFormatter.Write(value, row.Unit) : "–";
        }

        if (lines.FirstOrDefault(line => line.Name == row.Key) is not { Second: { } estimate } found)
        {
            return "–";
        }

        string change = changed ? $", {ComparisonFormatter.Change(found)}" : "";
        string interval = ForecastNumberFormatter.Interval(estimate, row.Unit);
        return $"{ForecastNumberFormatter.Write(estimate.Value, row.Unit)} ({interval}){change}";
    }

    /// <summary>What a fitted curve tells of it.</summary>
    private static double? Measured(Quantity row, ComparedDesign design, LoadCircuit load) =>
        row.Key switch
        {
            QuantityKey.LoadedPeak => design.Peak(load)?.FrequencyHz,
            QuantityKey.LoadedPeakGain => design.Peak(load)?.GainDb,
            QuantityKey.Minus3Db => design.Fall(load),
            QuantityKey.Noise => 20 * Math.Log10(design.NoiseV(load)),
            _ => null,
        };
}
