using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Comparisons;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Circuit;

namespace Coilwright.Web.Views.Comparisons;

/// <summary>
/// What differs in the results of designs on one load: each value with its interval, and its change from the first design with the change's
/// own.
/// </summary>
internal static class ResultDifference
{
    private static readonly (string Name, string Unit)[] s_rows =
    [
        (QuantityKey.DcResistance, "Ω"),
        (QuantityKey.Inductance, "H"),
        (QuantityKey.Capacitance, "F"),
        (QuantityKey.LoadedPeak, "Hz"),
        (QuantityKey.LoadedPeakGain, "dB"),
        ("minus3Db", "Hz"),
        (QuantityKey.Output, "V·s/m"),
        (QuantityKey.Hum, "m²"),
        ("noise", "dBV"),
    ];

    /// <summary>A row each result.</summary>
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
                    .Where(row => lines.Any(of => of?.Any(line => line.Name == row.Name) ?? false))
                    .Select(row =>
                        (
                            FigureFormatter.Name(row.Name),
                            (IReadOnlyList<string>)
                                [
                                    .. designs.Select(
                                        (design, i) => Cell(row, design, load, lines[i], changed: i > 0 && designs[0].Solved is not null)
                                    ),
                                ]
                        )
                    ),
            ];

    private static string Cell(
        (string Name, string Unit) row,
        ComparedDesign design,
        LoadCircuit load,
        IReadOnlyList<ComparisonLine>? lines,
        bool changed
    )
    {
        if (lines is null)
        {
            return Measured(row, design, load) is { } value ? ForecastNumberFormatter.Write(value, row.Unit) : "–";
        }

        if (lines.FirstOrDefault(line => line.Name == row.Name) is not { Second: { } estimate } found)
        {
            return "–";
        }

        string change = changed ? $", {ComparisonFormatter.Change(found)}" : "";
        string interval = ForecastNumberFormatter.Interval(estimate, row.Unit);
        return $"{ForecastNumberFormatter.Write(estimate.Value, row.Unit)} ({interval}){change}";
    }

    /// <summary>What a fitted curve tells of it.</summary>
    private static double? Measured((string Name, string Unit) row, ComparedDesign design, LoadCircuit load) =>
        row.Name switch
        {
            QuantityKey.LoadedPeak => design.Peak(load)?.FrequencyHz,
            QuantityKey.LoadedPeakGain => design.Peak(load)?.GainDb,
            "minus3Db" => design.Fall(load),
            "noise" => 20 * Math.Log10(design.NoiseV(load)),
            _ => null,
        };
}
