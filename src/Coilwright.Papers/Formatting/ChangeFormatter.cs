using System.Globalization;
using Coilwright.Workshop.Solving;

namespace Coilwright.Papers.Formatting;

/// <summary>How a changed value of a solution is written.</summary>
public static class ChangeFormatter
{
    /// <summary>A count, several coils' counts, or a text.</summary>
    public static string Told(object value) =>
        value switch
        {
            int count => count.ToString(CultureInfo.InvariantCulture),
            IEnumerable<int> counts => string.Join("/", counts.Select(count => count.ToString(CultureInfo.InvariantCulture))),
            _ => value.ToString() ?? "",
        };

    /// <summary>Everything that a solution changed.</summary>
    public static string Words(Solution solution) =>
        string.Join(", ", solution.Changes.Select(change => $"{change.Key} {Told(change.Value)}"));
}
