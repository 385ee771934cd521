namespace Coilwright.Analysis.Pairing;

/// <summary>One possible pair of a free pairing and what it weighs.</summary>
/// <param name="A">One end, from 0.</param>
/// <param name="B">The other end.</param>
/// <param name="Weight">Cost or gain of the pair; a whole number, so that the answer is exact.</param>
public readonly record struct WeightedPair(int A, int B, long Weight);

/// <summary>Pairs among things of one kind: at most one pair each, best in total [Blossom].</summary>
public static class GeneralMatching
{
    /// <summary>The pairs whose weights add up to most; a pair that would add nothing is left out.</summary>
    /// <param name="count">How many things there are.</param>
    /// <param name="pairs">The possible pairs; ends from 0 to count − 1, differing.</param>
    public static IReadOnlyList<WeightedPair> MostWeight(int count, IReadOnlyList<WeightedPair> pairs) =>
        Solve(count, pairs, pair => pair.Weight);

    /// <summary>As many pairs as can be, and of those choices the one whose weights add up to least.</summary>
    /// <param name="count">How many things there are.</param>
    /// <param name="pairs">The possible pairs.</param>
    public static IReadOnlyList<WeightedPair> LeastWeight(int count, IReadOnlyList<WeightedPair> pairs)
    {
        if (pairs.Count == 0)
        {
            return [];
        }

        // One pair more outweighs any difference between choices of equal number.
        long low = pairs.Min(pair => pair.Weight),
            high = pairs.Max(pair => pair.Weight),
            onePairMore = (high - low) * (count / 2 + 1) + 1;
        return Solve(count, pairs, pair => onePairMore + (high - pair.Weight));
    }

    private static IReadOnlyList<WeightedPair> Solve(int count, IReadOnlyList<WeightedPair> pairs, Func<WeightedPair, long> gain)
    {
        Dictionary<(int A, int B), (WeightedPair Pair, long Gain)> best = [];
        foreach (WeightedPair pair in pairs)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(Math.Min(pair.A, pair.B), nameof(pairs));
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Math.Max(pair.A, pair.B), count, nameof(pairs));
            ArgumentOutOfRangeException.ThrowIfEqual(pair.A, pair.B, nameof(pairs));
            (int, int) key = (Math.Min(pair.A, pair.B), Math.Max(pair.A, pair.B));
            if (gain(pair) > 0 && (!best.TryGetValue(key, out (WeightedPair Pair, long Gain) known) || known.Gain < gain(pair)))
            {
                best[key] = (pair, gain(pair));
            }
        }

        BlossomSearch search = new(count);
        foreach (((int a, int b), (_, long weight)) in best)
        {
            search.Join(a, b, weight);
        }

        int[] partner = search.Solve();
        return [.. Enumerable.Range(0, count).Where(a => partner[a] > a).Select(a => best[(a, partner[a])].Pair)];
    }
}
