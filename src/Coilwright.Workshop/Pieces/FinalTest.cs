using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Pieces;

/// <summary>The final test: every reading against the golden piece, and the cause that the pattern of deviations points to.</summary>
/// <param name="Lines">What is asked.</param>
/// <param name="ExpectedSwing">Sign of the first swing when iron comes near; 0 when not tested.</param>
public sealed record FinalTest(IReadOnlyList<TestLine> Lines, int ExpectedSwing = 0)
{
    /// <summary>Judges a piece.</summary>
    /// <param name="readings">Values by quantity, SI; what was not measured is left out.</param>
    /// <param name="poles">Gauss over the poles, or null when not read.</param>
    /// <param name="northUp">+1 or −1 by the recipe, 0 when it does not say.</param>
    /// <param name="firstSwing">Sign of the first swing seen, or null when not tested.</param>
    /// <param name="flaws">What the eye found; empty when nothing.</param>
    /// <param name="largestSpread">The shop's limit of the poles' spread, a part of their mean.</param>
    /// <param name="charge">The field against the magnets' charge; null when there is nothing to tell.</param>
    public FinalTestVerdict Judge(
        IReadOnlyDictionary<string, double> readings,
        PoleReading? poles = null,
        int northUp = 0,
        int? firstSwing = null,
        string flaws = "",
        double largestSpread = PoleReading.UsualSpread,
        TestOutcome? charge = null
    )
    {
        List<TestOutcome> outcomes = [.. Lines.Select(line => Against(line, readings))];
        if (ExpectedSwing != 0)
        {
            outcomes.Add(Swing(firstSwing));
        }

        if (poles is not null)
        {
            outcomes.Add(poles.Judge(northUp, largestSpread));
        }

        if (charge is not null)
        {
            outcomes.Add(charge);
        }

        if (flaws.Trim().Length > 0)
        {
            outcomes.Add(new TestOutcome("looks", TestResult.Fail, $"fail: {flaws.Trim()}"));
        }

        return new FinalTestVerdict(outcomes, Word(outcomes), outcomes.All(outcome => outcome.Result == TestResult.Pass));
    }

    private static TestOutcome Against(TestLine line, IReadOnlyDictionary<string, double> readings)
    {
        string reference = line.IsGolden ? "golden piece" : "recipe";
        if (!readings.TryGetValue(line.Quantity, out double value) || !double.IsFinite(value))
        {
            return line.Needed
                ? new TestOutcome(line.Quantity, TestResult.Missing, $"{Name(line.Quantity)} not measured")
                : new TestOutcome(line.Quantity, TestResult.Pass, $"{Name(line.Quantity)} not measured, not asked for");
        }

        double deviation = value / line.Reference - 1;
        string words = string.Create(
            CultureInfo.InvariantCulture,
            $"{Name(line.Quantity)} {Signed(deviation)} against the {reference}, allowed ±{100 * line.Tolerance:0.#} %"
        );
        return new TestOutcome(line.Quantity, Math.Abs(deviation) <= line.Tolerance ? TestResult.Pass : TestResult.Fail, words, deviation);
    }

    private TestOutcome Swing(int? seen) =>
        seen switch
        {
            null or 0 => new TestOutcome("polarity", TestResult.Missing, "first swing not tested"),
            { } sign when Math.Sign(sign) == Math.Sign(ExpectedSwing) => new TestOutcome(
                "polarity",
                TestResult.Pass,
                "first swing as expected"
            ),
            _ => new TestOutcome("polarity", TestResult.Stop, "stop: reversed polarity. Check leads, winding direction, magnet"),
        };

    private static string Word(List<TestOutcome> outcomes)
    {
        if (outcomes.Find(outcome => outcome.Result == TestResult.Stop) is { } stop)
        {
            return stop.Words;
        }

        string[] failed = [.. outcomes.Where(outcome => outcome.Result == TestResult.Fail).Select(outcome => outcome.What)];
        if (failed.Length > 0)
        {
            return "fail: " + Cause(failed, outcomes);
        }

        string[] missing = [.. outcomes.Where(outcome => outcome.Result == TestResult.Missing).Select(outcome => outcome.Words)];
        return missing.Length > 0 ? "hold: " + string.Join("; ", missing) : "pass";
    }

    /// <summary>
    /// What the pattern points to. Rules of thumb from how each fault moves ohms, inductance and loss: common practice, no source.
    /// </summary>
    private static string Cause(string[] failed, List<TestOutcome> outcomes)
    {
        double Off(string key) => outcomes.Find(outcome => outcome.What == key)?.Deviation ?? 0;
        double ohm = Off(QuantityKey.DcResistance),
            henry = Off(QuantityKey.Inductance);
        bool ohms = failed.Contains(QuantityKey.DcResistance),
            henries = failed.Contains(QuantityKey.Inductance),
            lowQ = failed.Contains(QuantityKey.Q) && Off(QuantityKey.Q) < 0,
            highLoss = failed.Contains(QuantityKey.AcResistance) && Off(QuantityKey.AcResistance) > 0,
            loss = lowQ || highLoss;
        return (ohms, henries, loss) switch
        {
            (true, true, _) when ohm < -0.3 => "one coil is shorted out, or the coils are wired in parallel",
            (true, true, _) when Math.Sign(ohm) == Math.Sign(henry) => "probably the wrong number of turns",
            (true, true, _) => "resistance and inductance disagree",
            (true, false, _) when ohm > 0 => "resistance too high (joint, thin wire or a warm piece)",
            (true, false, _) => "resistance too low (thick wire, or a short in the leads)",
            (false, true, true) when henry < 0 => "shorted turns",
            (false, true, _) => "inductance (core, magnet or height of the poles)",
            (false, false, true) => "too much loss (shorted turns or added metal)",
            _ => string.Join(", ", failed.Select(Name)),
        };
    }

    private static string Name(string key) => Quantity.Find(key)?.ComparedLabel ?? KeyLabels.Of(key);

    private static string Signed(double deviation) =>
        string.Create(CultureInfo.InvariantCulture, $"{(deviation < 0 ? "−" : "+")}{Math.Abs(100 * deviation):0.0} %");
}
