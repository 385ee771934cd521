using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Solving;

namespace Coilwright.Papers.Formatting;

/// <summary>Which quantities a table of solutions shows, and in what unit: one rule for the page and the command.</summary>
public static class SolutionColumns
{
    private static readonly string[] s_shown =
    [
        QuantityKey.DcResistance,
        QuantityKey.Inductance,
        QuantityKey.LoadedPeak,
        QuantityKey.LoadedPeakGain,
        QuantityKey.Output,
        QuantityKey.Fill,
        QuantityKey.WireMass,
    ];

    /// <summary>The columns that at least one solution has a value for.</summary>
    public static IReadOnlyList<(string Name, string Unit)> For(IReadOnlyList<Solution> solutions) =>
        [.. s_shown.Where(column => solutions.Any(one => one.Values.ContainsKey(column))).Select(column => (column, UnitOf(column)))];

    /// <summary>Name and unit of a quantity for an axis.</summary>
    public static (string Name, string Unit) Axis(string quantity) => (FigureFormatter.Name(quantity), UnitOf(quantity));

    private static string UnitOf(string quantity) => Quantity.FindResult(quantity)?.Unit ?? "";
}
