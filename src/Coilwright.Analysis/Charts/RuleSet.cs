using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Charts;

/// <summary>One rule and how often it alarms by itself when nothing is wrong.</summary>
/// <param name="Rule">The rule in words.</param>
/// <param name="FalseAlarmEvery">Values between two false alarms on average; infinite when it never alarms.</param>
public sealed record RuleAlarm(string Rule, double FalseAlarmEvery);

/// <summary>
/// A set of run rules with the false alarms of each and of all together, for independent normal values with known centre and sigma
/// [NelsonRules].
/// </summary>
/// <param name="Name">Whose rules they are.</param>
/// <param name="Rules">The rules, in order.</param>
/// <param name="TogetherEvery">Values between two false alarms of all together.</param>
/// <param name="Exact">True when that number is exact; otherwise it was simulated, to about 1 %.</param>
public sealed record RuleSet(string Name, IReadOnlyList<RuleAlarm> Rules, double TogetherEvery, bool Exact)
{
    private const double WithinOne = 0.682689492137086;
    private static readonly Lazy<RuleSet> s_westernElectric = new(MakeWesternElectric);
    private static readonly Lazy<RuleSet> s_nelson = new(MakeNelson);

    /// <summary>The four Western Electric rules.</summary>
    public static RuleSet WesternElectric => s_westernElectric.Value;

    /// <summary>The eight rules of Nelson.</summary>
    public static RuleSet Nelson => s_nelson.Value;

    /// <summary>Where the rules are broken, in order of place.</summary>
    public IReadOnlyList<RunSignal> Signals(IReadOnlyList<double> values, double centre, double sigma) =>
        ReferenceEquals(this, Nelson) ? RunRules.Nelson(values, centre, sigma) : RunRules.WesternElectric(values, centre, sigma);

    /// <summary>
    /// Mean wait for a run of <paramref name="length"/> values that each belong with chance <paramref name="chance"/>: (1 − pʳ)/((1 −
    /// p)·pʳ).
    /// </summary>
    public static double WaitForRun(double chance, int length) =>
        (1 - Math.Pow(chance, length)) / ((1 - chance) * Math.Pow(chance, length));

    private static RuleSet MakeWesternElectric() =>
        new(
            "Western Electric",
            [
                new(RunRules.BeyondThree, RuleRunLength.Compute(0, false, false, 0)),
                new(RunRules.TwoOfThree, RuleRunLength.Compute(0, true, false, 0, beyondThree: false)),
                new(RunRules.FourOfFive, RuleRunLength.Compute(0, false, true, 0, beyondThree: false)),
                new(RunRules.EightOnOneSide, RuleRunLength.Compute(0, false, false, 8, beyondThree: false)),
            ],
            RuleRunLength.Compute(),
            Exact: true
        );

    private static RuleSet MakeNelson() =>
        new(
            "Nelson",
            [
                new(RunRules.BeyondThree, RuleRunLength.Compute(0, false, false, 0)),
                new(RunRules.NineOnOneSide, RuleRunLength.Compute(0, false, false, 9, beyondThree: false)),
                new(RunRules.SixTrending, StepRunLength.Trending(6)),
                new(RunRules.FourteenAlternating, StepRunLength.Alternating(14)),
                new(RunRules.TwoOfThree, RuleRunLength.Compute(0, true, false, 0, beyondThree: false)),
                new(RunRules.FourOfFive, RuleRunLength.Compute(0, false, true, 0, beyondThree: false)),
                new(RunRules.FifteenWithin, WaitForRun(WithinOne, 15)),
                new(RunRules.EightOutside, WaitForRun(1 - WithinOne, 8)),
            ],
            Simulated(RunRules.Nelson, runs: 10_000),
            Exact: false
        );

    /// <summary>Mean place of the first signal over many runs of normal values, always the same ones.</summary>
    private static double Simulated(Func<IReadOnlyList<double>, double, double, IReadOnlyList<RunSignal>> rules, int runs)
    {
        Random random = new(1984);
        const int Block = 64;
        double total = 0;
        List<double> values = [];
        for (int run = 0; run < runs; run++)
        {
            values.Clear();
            IReadOnlyList<RunSignal> signals = [];
            while (signals.Count == 0)
            {
                values.AddRange(Enumerable.Range(0, Block).Select(_ => Normal.InvCDF(0, 1, 1 - random.NextDouble())));
                signals = rules(values, 0, 1);
            }

            total += signals[0].Index + 1;
        }

        return total / runs;
    }
}
