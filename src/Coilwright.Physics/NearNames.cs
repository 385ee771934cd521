namespace Coilwright.Physics;

/// <summary>Known names near to a mistyped one; case, spaces and hyphens do not count.</summary>
public static class NearNames
{
    private const int LongestCompared = 64;

    /// <summary>
    /// Known names, each once: those that hold what was typed whole, then by the letters to change, drop or add, then by the alphabet.
    /// </summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">Names there are.</param>
    /// <param name="count">How many at most.</param>
    /// <param name="onlyAlike">Leaves out names of which more than a third is different.</param>
    public static IReadOnlyList<string> Find(string typed, IEnumerable<string> known, int count, bool onlyAlike = false)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string key = Key(typed);
        return
        [
            .. known
                .Distinct(StringComparer.OrdinalIgnoreCase)
                .Select(name => new Candidate(name, key, Key(name)))
                .Where(one => !onlyAlike || one.Distance <= Math.Max(1, one.Letters / 3))
                .OrderBy(one => one.Order)
                .ThenBy(one => one.Distance)
                .ThenBy(one => one.Name, StringComparer.OrdinalIgnoreCase)
                .Take(count)
                .Select(one => one.Name),
        ];
    }

    /// <summary>The nearest of the known names; null when none has a letter in common with what was typed.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">Names there are.</param>
    public static string? Nearest(string typed, IEnumerable<string> known) =>
        Find(typed, known, 1) is [var name] && new Candidate(name, Key(typed), Key(name)) is { } one && one.Distance < one.Letters
            ? name
            : null;

    /// <summary>Letters to change, drop or add to make one text of the other.</summary>
    public static int Distance(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        int[] previous = [.. Enumerable.Range(0, b.Length + 1)];
        int[] current = new int[b.Length + 1];
        for (int i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int change = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                current[j] = Math.Min(change, 1 + Math.Min(previous[j], current[j - 1]));
            }

            (previous, current) = (current, previous);
        }

        return previous[b.Length];
    }

    private static string Key(string name)
    {
        string key = name.Length > LongestCompared ? name[..LongestCompared] : name;
        return key.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
    }

    private sealed record Candidate(string Name, string Typed, string Key)
    {
        public int Distance { get; } = NearNames.Distance(Typed, Key);

        public int Letters => Math.Max(Typed.Length, Key.Length);

        public int Order => Typed.Length > 2 && Key.Contains(Typed, StringComparison.Ordinal) ? 0 : 1;
    }
}
