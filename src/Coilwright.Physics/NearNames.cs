namespace Coilwright.Physics;

/// <summary>The names nearest to a mistyped one, those that hold it whole first, then by the letters to change, drop or add.</summary>
public static class NearNames
{
    /// <summary>Up to <paramref name="count"/> of <paramref name="known"/>, nearest first, ties in ordinal order.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">Names that there are.</param>
    /// <param name="count">How many to tell, at most.</param>
    public static IReadOnlyList<string> Find(string typed, IEnumerable<string> known, int count)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string folded = typed.Trim().ToUpperInvariant();
        return
        [
            .. known
                .OrderBy(name => folded.Length > 2 && name.Contains(folded, StringComparison.OrdinalIgnoreCase) ? 0 : 1)
                .ThenBy(name => Distance(folded, name.ToUpperInvariant()))
                .ThenBy(name => name, StringComparer.Ordinal)
                .Take(count),
        ];
    }

    /// <summary>Letters to change, drop or add to make one text of the other.</summary>
    internal static int Distance(string a, string b)
    {
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
}
