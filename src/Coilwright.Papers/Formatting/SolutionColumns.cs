using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Solving;

namespace Coilwright.Papers.Formatting;

/// <summary>Which quantities a table of solutions shows, and in what unit: one rule for the page and the command.</summary>
public static class SolutionColumns
{
    private static readonly (string Name, string Unit)[] s_shown =
    [
        (QuantityKey.DcResistance, "Ω"),
        (QuantityKey.Inductance, "H"),
        (QuantityKey.LoadedPeak, "Hz"),
        (QuantityKey.LoadedPeakGain, "dB"),
        (QuantityKey.Output, "V·s/m"),
        (QuantityKey.Fill, "1"),
        (QuantityKey.WireMass, "kg"),
    ];

    private static readonly Dictionary<string, string> s_others = new()
    {
        [QuantityKey.Capacitance] = "F",
        [QuantityKey.UnloadedPeak] = "Hz",
        ["unloadedPeakGain"] = "dB",
        [QuantityKey.Hum] = "m²",
        [QuantityKey.Build] = "m",
        [QuantityKey.WireLength] = "m",
        [QuantityKey.MeanTurnLength] = "m",
        [QuantityKey.AirInductance] = "H",
    };

    /// <summary>The columns that at least one solution has a value for.</summary>
    public static IReadOnlyList<(string Name, string Unit)> For(IReadOnlyList<Solution> solutions) =>
        [.. s_shown.Where(column => solutions.Any(one => one.Values.ContainsKey(column.Name)))];

    /// <summary>Name and unit of a quantity for an axis.</summary>
    public static (string Name, string Unit) Axis(string quantity) =>
        (
            FigureFormatter.Name(quantity),
            s_shown.FirstOrDefault(column => column.Name == quantity).Unit ?? s_others.GetValueOrDefault(quantity, "1")
        );
}
