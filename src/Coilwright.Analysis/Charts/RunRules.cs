namespace Coilwright.Analysis.Charts;

/// <summary>A point of a run at which a rule is broken.</summary>
/// <param name="Index">Place in the run, from 0.</param>
/// <param name="Rule">The rule in words.</param>
public sealed record RunSignal(int Index, string Rule);

/// <summary>Rules that tell a run of values with a cause from one by chance.</summary>
/// <remarks>
/// The four Western Electric rules (definitions read in the qcc documentation, page "Rules"; the handbook of 1956 itself was not read).
/// Together they give a false alarm every 91.75 points on average when centre and sigma are known (Champ and Woodall, Technometrics 29, 1987; read in a secondary source).
/// </remarks>
public static class RunRules
{
    public const string BeyondThree = "1 point beyond 3 sigma";
    public const string TwoOfThree = "2 of 3 consecutive beyond 2 sigma, same side";
    public const string FourOfFive = "4 of 5 consecutive beyond 1 sigma, same side";
    public const string EightOnOneSide = "8 consecutive on one side of the centre line";

    /// <summary>All four rules, in order of place.</summary>
    public static IReadOnlyList<RunSignal> WesternElectric(IReadOnlyList<double> values, double centre, double sigma) =>
    [
        .. Signals(BeyondThree, Several(values, centre, 3 * sigma, 1, 1))
            .Concat(Signals(TwoOfThree, Several(values, centre, 2 * sigma, 2, 3)))
            .Concat(Signals(FourOfFive, Several(values, centre, sigma, 4, 5)))
            .Concat(Signals(EightOnOneSide, Several(values, centre, 0, 8, 8)))
            .OrderBy(signal => signal.Index),
    ];

    /// <summary>Places where a point beyond a distance from the centre completes <paramref name="needed"/> of <paramref name="window"/> neighbours beyond it on the same side.</summary>
    public static IEnumerable<int> Several(IReadOnlyList<double> values, double centre, double distance, int needed, int window)
    {
        double rounding = 1e-12 * Math.Abs(centre); // a mean of equal values is not always equal to them
        for (int last = 0; last < values.Count; last++)
        {
            int side = Math.Sign(values[last] - centre), count = 0;
            for (int place = Math.Max(0, last - window + 1); place <= last; place++)
            {
                count += side * (values[place] - centre) > distance + rounding ? 1 : 0;
            }

            if (side * (values[last] - centre) > distance + rounding && count >= needed)
            {
                yield return last;
            }
        }
    }

    private static IEnumerable<RunSignal> Signals(string rule, IEnumerable<int> places) => places.Select(place => new RunSignal(place, rule));
}
