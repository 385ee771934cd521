using Coilwright.Physics;

namespace Coilwright.Analysis.Listening;

/// <summary>What a blind test says: in each round a sound that is one of two was to be named.</summary>
/// <param name="Hits">Rounds with the right answer.</param>
/// <param name="Rounds">Rounds in all, 1…60, none left out.</param>
/// <remarks>
/// Whoever hears nothing is right in each round with probability 1/2, whatever went before: the number of hits is binomial, and so many or
/// more come by guessing in Σ C(n, k)/2ⁿ of all tests, k from the hits to n [BlindTest]. It is an exact sum, no approximation.
/// </remarks>
public sealed record BlindVerdict(int Hits, int Rounds)
{
    /// <summary>Lengths of test that are offered, rounds.</summary>
    public static IReadOnlyList<int> Lengths { get; } = [10, 16, 20];

    /// <summary>A difference counts as heard when guessing gives so many hits at most this often: common practice.</summary>
    public const double Significance = 0.05;

    /// <summary>Probability that somebody who only guesses has so many hits or more.</summary>
    public double GuessProbability => AtLeast(Hits, Rounds, 0.5);

    /// <summary>True when a difference was heard, at 5 %.</summary>
    public bool IsHeard => GuessProbability <= Significance;

    /// <summary>Fewest hits by which a difference counts as heard; one more than all rounds when none does.</summary>
    /// <param name="rounds">Rounds in all, 1…60.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of rounds lies outside its range.</exception>
    public static int Needed(int rounds) => 1 + Enumerable.Range(0, rounds + 1).Last(hits => !new BlindVerdict(hits, rounds).IsHeard);

    /// <summary>Probability of so many hits or more for somebody who is right in each round with the same probability.</summary>
    /// <param name="hits">Hits, 0 to the number of rounds.</param>
    /// <param name="rounds">Rounds in all, 1…60.</param>
    /// <param name="right">Probability of a hit in a round, 0…1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double AtLeast(int hits, int rounds, double right)
    {
        Require.InRange(rounds, 1, 60);
        Require.InRange(hits, 0, rounds);
        Require.InRange(right, 0, 1);
        double sum = 0;
        long ways = 1; // C(n, n), then C(n, k − 1) = C(n, k)·k/(n − k + 1)
        for (int k = rounds; k >= hits; k--)
        {
            sum += ways * Math.Pow(right, k) * Math.Pow(1 - right, rounds - k);
            ways = k > 0 ? (long)((Int128)ways * k / (rounds - k + 1)) : 0;
        }

        return sum;
    }

    /// <summary>Part of such tests that find somebody who is right in three rounds of four.</summary>
    /// <param name="rounds">Rounds in all, 1…60.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of rounds lies outside its range.</exception>
    public static double FindsThreeInFour(int rounds) => Needed(rounds) <= rounds ? AtLeast(Needed(rounds), rounds, 0.75) : 0;
}
