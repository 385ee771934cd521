using System.Globalization;

namespace Coilwright.Physics.Wire;

/// <summary>Reads the tables that travel inside the assembly. Lines with # are remarks; the first other line names the columns.</summary>
internal static class WireTables
{
    private const double M = 1e-3;
    private static readonly string[] AwgBuilds = ["single", "heavy", "triple", "quad"];
    private static readonly string[] Grades = ["grade-1", "grade-2", "grade-3"];

    public static IEnumerable<WireSize> Sizes() => Rows("awg").Select(Awg).Concat(Rows("metric").Select(Metric));

    public static IEnumerable<Insulation> Insulations() =>
        Rows("insulation")
            .Select(row => new Insulation
            {
                Key = row["key"],
                Permittivity = new(Number(row["permittivity"]), Number(row["low"]), Number(row["high"]), Basis.Assumed),
                PermittivityStanding = row["standing"],
                DensityKgPerM3 = Number(row["densityKgPerM3"]),
                DensityStanding = row["densityStanding"],
                Solderable = row["solderable"] == "yes",
                Note = row["note"],
            });

    /// <summary>AWG number → largest tension, gf.</summary>
    public static IEnumerable<(double Awg, double MaxGramForce)> Tensions() =>
        Rows("tension").Select(row => (Number(row["awg"]), Number(row["maxGramForce"])));

    private static WireSize Awg(Dictionary<string, string> row) =>
        new()
        {
            Gauge = "AWG " + row["awg"],
            IsMetric = false,
            Number = Number(row["awg"]),
            Bare = Limits(row, "bare"),
            Builds = Builds(row, AwgBuilds),
            Source = row["source"],
            Note = row["note"],
        };

    private static WireSize Metric(Dictionary<string, string> row) =>
        new()
        {
            Gauge = row["size"] + " mm",
            IsMetric = true,
            Number = Number(row["size"]),
            Bare = Limits(row, "bare"),
            Builds = Builds(row, Grades),
            Source = row["source"],
            Note = row["note"],
        };

    private static Dictionary<string, DiameterLimits> Builds(Dictionary<string, string> row, string[] names) =>
        names.Where(name => row[name + "Min"].Length > 0).ToDictionary(name => name, name => Limits(row, name), StringComparer.Ordinal);

    private static DiameterLimits Limits(Dictionary<string, string> row, string name)
    {
        double min = Number(row[name + "Min"]);
        double max = Number(row[name + "Max"]);
        double nominal = row.TryGetValue(name + "Nominal", out string? text) ? Number(text) : (min + max) / 2;
        return new(min * M, nominal * M, max * M);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static IEnumerable<Dictionary<string, string>> Rows(string table)
    {
        using Stream stream = typeof(WireTables).Assembly.GetManifestResourceStream($"Coilwright.Physics.Wire.Tables.{table}.csv")
            ?? throw new InvalidOperationException($"The table {table} is not in the assembly.");
        using StreamReader reader = new(stream);
        string[] lines = reader.ReadToEnd().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        string[] rows = [.. lines.Where(line => line[0] != '#')];
        string[] names = rows[0].Split(',');
        return [.. rows.Skip(1).Select(row => names.Zip(row.Split(',')).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];
    }
}
