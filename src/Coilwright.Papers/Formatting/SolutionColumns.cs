using Coilwright.Workshop.Solving;

namespace Coilwright.Papers.Formatting;

/// <summary>Which quantities a table of solutions shows, and in what unit: one rule for the page and the command.</summary>
public static class SolutionColumns
{
    private static readonly (string Name, string Unit)[] s_shown =
    [
        ("dcResistance", "Ω"),
        ("inductance", "H"),
        ("loadedPeak", "Hz"),
        ("loadedPeakGain", "dB"),
        ("output", "V·s/m"),
        ("fill", "1"),
        ("wireMass", "kg"),
    ];

    private static readonly Dictionary<string, string> s_others = new()
    {
        ["capacitance"] = "F",
        ["unloadedPeak"] = "Hz",
        ["unloadedPeakGain"] = "dB",
        ["hum"] = "m²",
        ["build"] = "m",
        ["wireLength"] = "m",
        ["meanTurnLength"] = "m",
        ["airInductance"] = "H",
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
