using System.Globalization;
using System.Text.Json.Nodes;

namespace Coilwright.Tests.Matrix;

/// <summary>
/// The numbers of a printed prediction by column of the matrix: one column holds a quantity of every coil, or of every string.
/// </summary>
internal static class MatrixOutputs
{
    /// <summary>A change below this part of the largest value of the column is rounding.</summary>
    private const double Rounding = 1e-7;

    /// <summary>Columns: short name, what it is, and where it stands in the printed prediction.</summary>
    public static readonly IReadOnlyList<(string Name, string Words, string[] Path)> Columns =
    [
        ("turnsPerLayer", "turns per layer", ["coils", "*", "turnsPerLayer"]),
        ("layers", "layers", ["coils", "*", "layers"]),
        ("fill", "fill", ["coils", "*", "fill"]),
        ("build", "build", ["coils", "*", "build"]),
        ("meanTurn", "mean turn", ["coils", "*", "meanTurnLength"]),
        ("wireLength", "wire length", ["coils", "*", "wireLength"]),
        ("wireMass", "wire mass", ["coils", "*", "wireMass"]),
        ("coilOhm", "DC resistance of each coil", ["coils", "*", "dcResistance"]),
        ("airHenry", "inductance without cores", ["coils", "*", "airInductance"]),
        ("coilHenry", "inductance of each coil at 1 kHz", ["coils", "*", "inductance"]),
        ("coilFarad", "capacitance of each coil", ["coils", "*", "capacitance"]),
        ("ohm", "DC resistance", ["pickup", "dcResistance"]),
        ("henry", "inductance at 1 kHz", ["pickup", "inductance"]),
        ("farad", "capacitance", ["pickup", "capacitance"]),
        ("peak", "unloaded resonance", ["pickup", "unloadedResonance", "frequency"]),
        ("peakGain", "its height", ["pickup", "unloadedResonance", "gain"]),
        ("loadedPeak", "loaded resonance", ["pickup", "loadedResonance", "frequency"]),
        ("loadedGain", "its height", ["pickup", "loadedResonance", "gain"]),
        ("coupling", "coupling of the coils", ["pickup", "coupling"]),
        ("henry10k", "inductance at 10 kHz", ["pickup", "spectrum", "2", "inductance"]),
        ("ohm10k", "AC resistance at 10 kHz", ["pickup", "spectrum", "2", "resistance"]),
        ("linkage", "linkage of the strings", ["pickup", "output", "*", "linkage"]),
        ("output", "output of the strings", ["pickup", "output", "*", "sensitivity"]),
        ("field", "field at the strings", ["pickup", "fieldAtStrings", "*"]),
        ("poleField", "field over the poles", ["pickup", "poleField", "*", "field"]),
        ("humArea", "hum, effective area", ["pickup", "hum", "effectiveArea"]),
        ("humLeft", "hum left of the coils'", ["pickup", "hum", "residual"]),
        ("humX", "hum of a field changing along x", ["pickup", "hum", "gradientX"]),
        ("humY", "the same along y", ["pickup", "hum", "gradientY"]),
        ("humZ", "the same along z", ["pickup", "hum", "gradientZ"]),
    ];

    /// <summary>The names of the columns in which two printed predictions differ.</summary>
    public static IReadOnlySet<string> Moved(JsonNode before, JsonNode after) =>
        Columns
            .Where(column => Differ(Values(before, column.Path), Values(after, column.Path)))
            .Select(column => column.Name)
            .ToHashSet(StringComparer.Ordinal);

    private static bool Differ(double[] one, double[] other) =>
        one.Length != other.Length
        || one.Zip(other, (a, b) => Math.Abs(a - b)).DefaultIfEmpty(0).Max() > Rounding * one.Select(Math.Abs).DefaultIfEmpty(0).Max();

    private static double[] Values(JsonNode? node, ReadOnlySpan<string> path)
    {
        if (node is null)
        {
            return [];
        }

        if (path.IsEmpty)
        {
            return node["value"] is { } value ? [value.GetValue<double>()] : [];
        }

        if (node is not JsonArray items)
        {
            return Values(node[path[0]], path[1..]);
        }

        List<double> all = [];
        foreach (
            JsonNode? item in path[0] == "*" ? items : new JsonArray(items[int.Parse(path[0], CultureInfo.InvariantCulture)]!.DeepClone())
        )
        {
            all.AddRange(Values(item, path[1..]));
        }

        return [.. all];
    }
}
