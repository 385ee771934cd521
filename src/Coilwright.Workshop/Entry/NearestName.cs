namespace Coilwright.Workshop.Entry;

/// <summary>Finds the known name nearest to a mistyped one.</summary>
public static class NearestName
{
    /// <summary>
    /// The known name with the smallest edit distance (case and hyphens count little), or null when none is at all alike.
    /// </summary>
    public static string? Of(string typed, IEnumerable<string> known)
    {
        string? best = null;
        int bestDistance = int.MaxValue;
        string key = Key(typed);
        foreach (string name in known)
        {
            int distance = Distance(key, Key(name));
            if (distance < bestDistance)
            {
                (best, bestDistance) = (name, distance);
            }
        }

        return best is not null && bestDistance < Math.Max(key.Length, Key(best).Length) ? best : null;
    }

    /// <summary>Known names from the nearest on, each once.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">Names there are.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="onlyAlike">Leaves out names of which more than a third is different.</param>
    public static IReadOnlyList<string> Several(string typed, IEnumerable<string> known, int most, bool onlyAlike = false)
    {
        string key = Key(typed);
        return
        [
            .. known
                .Distinct(StringComparer.OrdinalIgnoreCase)
                .Select(name => (Name: name, Distance: Distance(key, Key(name))))
                .Where(one => !onlyAlike || one.Distance <= Math.Max(1, Math.Max(key.Length, Key(one.Name).Length) / 3))
                .OrderBy(one => one.Distance)
                .ThenBy(one => one.Name, StringComparer.OrdinalIgnoreCase)
                .Take(most)
                .Select(one => one.Name),
        ];
    }

    /// <summary>Levenshtein distance: insertions, deletions and replacements that turn one into the other.</summary>
    public static int Distance(string a, string b)
    {
        int[] row = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
        {
            row[j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int replace = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replace, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }

    private static string Key(string name)
    {
        string key = name.Length > 64 ? name[..64] : name;
        return key.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
    }
}
