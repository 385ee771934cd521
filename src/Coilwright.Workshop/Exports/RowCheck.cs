using System.Globalization;

namespace Coilwright.Workshop.Exports;

/// <summary>Holds rows against each other: what is one of a kind, and whether every record finds the ones it names.</summary>
/// <param name="problems">Takes what is wrong.</param>
public sealed class RowCheck(ImportProblems problems)
{
    private readonly Dictionary<string, HashSet<object>> _known = new(StringComparer.Ordinal);

    /// <summary>Looks at one row; those above it were looked at before.</summary>
    /// <param name="table">Its table.</param>
    /// <param name="line">Its line.</param>
    /// <param name="row">Its values.</param>
    public void Look(ExportTable table, long line, IReadOnlyList<object?> row)
    {
        foreach (ExportLink link in table.Links)
        {
            if (KeyOf(table, row, link.Columns, ignoresCase: false) is { } named && !Of(link.File, 0).Contains(named))
            {
                string where = link.File == table.File ? "no line above" : "no line of " + link.File;
                problems.Add(table.File, line, string.Join(", ", link.Columns), $"{where} has this", Words(named));
            }
        }

        for (int at = 0; at < table.Keys.Count; at++)
        {
            ExportKey key = table.Keys[at];
            if (KeyOf(table, row, key.Columns, key.IgnoresCase) is { } own && !Of(table.File, at).Add(own))
            {
                problems.Add(table.File, line, string.Join(", ", key.Columns), "a line above has this already", Words(own));
            }
        }
    }

    private HashSet<object> Of(string file, int key)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"{key} {file}");
        if (!_known.TryGetValue(name, out HashSet<object>? known))
        {
            _known[name] = known = [];
        }

        return known;
    }

    /// <summary>The columns as one value; null where one of them is missing.</summary>
    private static object? KeyOf(ExportTable table, IReadOnlyList<object?> row, IReadOnlyList<string> columns, bool ignoresCase)
    {
        object?[] parts = [.. columns.Select(column => row[table.PlaceOf(column)])];
        if (Array.Exists(parts, part => part is null))
        {
            return null;
        }

        object key = parts.Length == 1 ? parts[0]! : string.Join(' ', parts.Select(part => Words(part!)));
        return ignoresCase && key is string text ? Folded(text) : key;
    }

    /// <summary>As the database folds: a to z alone.</summary>
    private static string Folded(string text) => string.Create(text.Length, text, (to, from) =>
        {
            for (int at = 0; at < to.Length; at++)
            {
                to[at] = char.IsAsciiLetterUpper(from[at]) ? char.ToLowerInvariant(from[at]) : from[at];
            }
        });

    private static string Words(object value) => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
}
