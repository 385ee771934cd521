using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving;

namespace Coilwright.Papers.Formatting;

/// <summary>How a changed value of a solution is written.</summary>
public static class ChangeFormatter
{
    private const string Build = "build";

    /// <summary>A count, several coils' counts, or a text.</summary>
    public static string Told(object value) =>
        value switch
        {
            int count => count.ToString(CultureInfo.InvariantCulture),
            IEnumerable<int> counts => string.Join("/", counts.Select(count => count.ToString(CultureInfo.InvariantCulture))),
            _ => value.ToString() ?? "",
        };

    /// <summary>Everything that a solution changed: "8,120 turns, AWG 42, alnico 5".</summary>
    /// <param name="solution">What was found.</param>
    /// <param name="ownBuild">Film of the recipe asked about, which is told only where another is meant.</param>
    public static string Words(Solution solution, string ownBuild = "") => Words(solution.Changes, ownBuild);

    /// <summary>The same of changes by name.</summary>
    public static string Words(IReadOnlyDictionary<string, object> changes, string ownBuild = "") =>
        string.Join(", ", changes.Where(change => !(change.Key == Build && Told(change.Value) == ownBuild)).Select(InWords));

    private static string InWords(KeyValuePair<string, object> change) =>
        change.Key switch
        {
            "turns" => Counts(change.Value) + " turns",
            "gauge" => Told(change.Value),
            Build => KeyLabels.Of(Told(change.Value)) + " film",
            "magnet" => KeyLabels.Of(Told(change.Value)),
            "connection" => "in " + Told(change.Value),
            _ => $"{KeyLabels.Of(change.Key)} {Told(change.Value)}",
        };

    private static string Counts(object value) =>
        value switch
        {
            int count => Count(count),
            IEnumerable<int> counts => string.Join("/", counts.Select(Count)),
            _ => Told(value),
        };

    private static string Count(int count) => count.ToString("#,##0", CultureInfo.InvariantCulture);
}
