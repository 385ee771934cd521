namespace Coilwright.Analysis.Charts;

/// <summary>A point of a run at which a rule is broken.</summary>
/// <param name="Index">Place in the run, from 0.</param>
/// <param name="Rule">The rule in words.</param>
public sealed record RunSignal(int Index, string Rule);

/// <summary>Rules that tell a run of values with a cause from one by chance.</summary>
/// <remarks>
/// The four Western Electric rules (definitions read in the qcc documentation, page "Rules"; the handbook of 1956 itself was not read) and
/// the eight of
/// Nelson 1984 (from memory). How often they alarm for nothing: <see cref="RuleRunLength"/>.
/// </remarks>
public static class RunRules
{
    /// <summary>One far point; of Western Electric and of Nelson.</summary>
    public const string BeyondThree = "1 point beyond 3 sigma";

    /// <summary>Two of three; of both sets.</summary>
    public const string TwoOfThree = "2 of 3 consecutive beyond 2 sigma, same side";

    /// <summary>Four of five; of both sets.</summary>
    public const string FourOfFive = "4 of 5 consecutive beyond 1 sigma, same side";

    /// <summary>A run on one side; of Western Electric.</summary>
    public const string EightOnOneSide = "8 consecutive on one side of the centre line";

    /// <summary>A run on one side; of Nelson.</summary>
    public const string NineOnOneSide = "9 consecutive on one side of the centre line";

    /// <summary>A trend; of Nelson.</summary>
    public const string SixTrending = "6 consecutive steadily rising or falling";

    /// <summary>A saw-tooth; of Nelson.</summary>
    public const string FourteenAlternating = "14 consecutive alternating up and down";

    /// <summary>Too quiet, often two sources mixed within a subgroup; of Nelson.</summary>
    public const string FifteenWithin = "15 consecutive within 1 sigma";

    /// <summary>None near the centre, often two sources in turn; of Nelson.</summary>
    public const string EightOutside = "8 consecutive beyond 1 sigma, either side";

    /// <summary>All four Western Electric rules, in order of place.</summary>
    public static IReadOnlyList<RunSignal> WesternElectric(IReadOnlyList<double> values, double centre, double sigma) =>
        InOrder(
            Signals(BeyondThree, Several(values, centre, 3 * sigma, 1, 1)),
            Signals(TwoOfThree, Several(values, centre, 2 * sigma, 2, 3)),
            Signals(FourOfFive, Several(values, centre, sigma, 4, 5)),
            Signals(EightOnOneSide, Several(values, centre, 0, 8, 8))
        );

    /// <summary>All eight rules of Nelson, in order of place.</summary>
    public static IReadOnlyList<RunSignal> Nelson(IReadOnlyList<double> values, double centre, double sigma) =>
        InOrder(
            Signals(BeyondThree, Several(values, centre, 3 * sigma, 1, 1)),
            Signals(NineOnOneSide, Several(values, centre, 0, 9, 9)),
            Signals(SixTrending, Trending(values, 6)),
            Signals(FourteenAlternating, Alternating(values, 14)),
            Signals(TwoOfThree, Several(values, centre, 2 * sigma, 2, 3)),
            Signals(FourOfFive, Several(values, centre, sigma, 4, 5)),
            Signals(FifteenWithin, Within(values, centre, sigma, 15)),
            Signals(EightOutside, Outside(values, centre, sigma, 8))
        );

    /// <summary>
    /// Places where a point beyond a distance from the centre completes <paramref name="needed"/> of <paramref name="window"/> neighbours
    /// beyond it on the same side.
    /// </summary>
    public static IEnumerable<int> Several(IReadOnlyList<double> values, double centre, double distance, int needed, int window)
    {
        double limit = distance + Rounding(centre);
        ulong above = 0,
            below = 0,
            mask = (1UL << window) - 1;
        for (int last = 0; last < values.Count; last++)
        {
            double off = values[last] - centre;
            above = ((above << 1) | (off > limit ? 1UL : 0)) & mask;
            below = ((below << 1) | (-off > limit ? 1UL : 0)) & mask;
            ulong side = off > 0 ? above : below;
            if ((side & 1) == 1 && System.Numerics.BitOperations.PopCount(side) >= needed)
            {
                yield return last;
            }
        }
    }

    /// <summary>Places at the end of <paramref name="points"/> or more values that only rise or only fall.</summary>
    public static IEnumerable<int> Trending(IReadOnlyList<double> values, int points) => Steps(values, points, alternating: false);

    /// <summary>Places at the end of <paramref name="points"/> or more values that rise and fall in turn.</summary>
    public static IEnumerable<int> Alternating(IReadOnlyList<double> values, int points) => Steps(values, points, alternating: true);

    /// <summary>Places at the end of <paramref name="points"/> or more values within a distance of the centre, either side.</summary>
    public static IEnumerable<int> Within(IReadOnlyList<double> values, double centre, double distance, int points) =>
        Runs(values, points, value => Math.Abs(value - centre) < distance - Rounding(centre));

    /// <summary>Places at the end of <paramref name="points"/> or more values beyond a distance from the centre, either side.</summary>
    public static IEnumerable<int> Outside(IReadOnlyList<double> values, double centre, double distance, int points) =>
        Runs(values, points, value => Math.Abs(value - centre) > distance + Rounding(centre));

    private static IEnumerable<int> Runs(IReadOnlyList<double> values, int points, Func<double, bool> belongs)
    {
        int length = 0;
        for (int last = 0; last < values.Count; last++)
        {
            length = belongs(values[last]) ? length + 1 : 0;
            if (length >= points)
            {
                yield return last;
            }
        }
    }

    private static IEnumerable<int> Steps(IReadOnlyList<double> values, int points, bool alternating)
    {
        int length = 1,
            before = 0;
        for (int last = 1; last < values.Count; last++)
        {
            int step = Math.Sign(values[last] - values[last - 1]);
            bool goesOn = step != 0 && before != 0 && step == (alternating ? -before : before);
            int begun = step == 0 ? 1 : 2;
            length = goesOn ? length + 1 : begun;
            before = step;
            if (length >= points)
            {
                yield return last;
            }
        }
    }

    /// <summary>A mean of equal values is not always equal to them.</summary>
    private static double Rounding(double centre) => 1e-12 * Math.Abs(centre);

    private static IReadOnlyList<RunSignal> InOrder(params IEnumerable<RunSignal>[] rules) =>
        [.. rules.SelectMany(rule => rule).OrderBy(signal => signal.Index)];

    private static IEnumerable<RunSignal> Signals(string rule, IEnumerable<int> places) =>
        places.Select(place => new RunSignal(place, rule));
}
