using System.Globalization;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Machines;

/// <summary>A marked test of a counter: a mark on the spindle is counted by eye over real turns while the counter runs.</summary>
/// <param name="Turns">Real turns by the mark; parts of a turn are read from where the mark stands.</param>
/// <param name="Counted">What the counter ran on by.</param>
/// <param name="DoubtTurns">95 % doubt of the test, turns.</param>
public sealed record CounterTest(double Turns, double Counted, double DoubtTurns = CounterTest.UsualDoubtTurns)
{
    /// <summary>A mark read to a twentieth of a turn at the moment the counter moves on. Our assumption.</summary>
    public const double UsualDoubtTurns = 0.05;

    /// <summary>Real turns per count. Measured.</summary>
    public Estimate Correction
    {
        get
        {
            double correction = Turns / Counted,
                doubt = DoubtTurns / Counted;
            return new Estimate(correction, correction - doubt, correction + doubt, Basis.Measured);
        }
    }

    /// <summary>Where the correction comes from, for the sheet.</summary>
    public string Words =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"({Turns:0.##} real turns by the mark, {Counted:0.##} counted: × {Correction.Value:0.0000} ± {DoubtTurns / Counted:0.0000})"
        );

    /// <summary>Reads a test as typed; every problem at once.</summary>
    public static ReadOutcome<CounterTest> Read(string turns, string counted)
    {
        List<Problem> problems = [];
        double real = Count(turns, "turns", problems),
            shown = Count(counted, "counted", problems);
        if (problems.Count == 0 && !(real / shown is >= 0.5 and <= 2))
        {
            problems.Add(
                new Problem(
                    "turns",
                    "a counter this far out is broken or geared: check what was typed",
                    string.Create(CultureInfo.InvariantCulture, $"{real / shown:0.###} turns a count"),
                    "0.5 to 2"
                )
            );
        }

        return new ReadOutcome<CounterTest>(problems.Count == 0 ? new CounterTest(real, shown) : null, problems);
    }

    private static double Count(string typed, string field, List<Problem> problems)
    {
        if (
            QuantityParser.TryParse(typed, QuantityKind.Turns, unitRequired: false, out Entered entered, out string why)
            && entered.Si is >= 10 and <= 100_000
        )
        {
            return entered.Si;
        }

        problems.Add(
            new Problem(field, why.Length > 0 ? why : "a test this short or long says nothing", typed, "10 to 100,000; 100 is usual")
        );
        return double.NaN;
    }
}
