using Coilwright.Workshop.Pieces;
using TestResult = Coilwright.Workshop.Pieces.TestResult;

namespace Coilwright.Workshop.Tests.Pieces;

public sealed class FinalTestTests
{
    private static readonly FinalTest s_test = new(
        [new("dcResistance", 6200, 0.04), new("inductance", 2.4, 0.06), new("q", 7.6, 0.08)],
        ExpectedSwing: -1
    );

    [Fact]
    public void Loss_fails_a_piece_whose_ohms_pass()
    {
        FinalTestVerdict verdict = Judge(1.006, 0.996, 0.89);
        Assert.Equal("fail: too much loss (shorted turns or added metal)", verdict.Verdict);
        Assert.False(verdict.Passes);
        Assert.Equal(
            [TestResult.Pass, TestResult.Pass, TestResult.Fail, TestResult.Pass],
            verdict.Outcomes.Select(outcome => outcome.Result)
        );
        Assert.Equal([0.6, -0.4, -11.0], verdict.Outcomes.Take(3).Select(outcome => Math.Round(100 * outcome.Deviation!.Value, 1)));
        Assert.StartsWith("Q −11.0 % against the golden piece", verdict.Outcomes[2].Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.0, 1.0, 1.0, "pass")]
    [InlineData(1.0, 1.0, 1.2, "fail: Q")] // too good is not as the golden piece either
    [InlineData(0.95, 0.90, 1.0, "fail: probably the wrong number of turns")]
    [InlineData(1.06, 1.0, 1.0, "fail: resistance too high (joint, thin wire or a warm piece)")]
    [InlineData(1.0, 0.9, 1.0, "fail: inductance (core, magnet or height of the poles)")]
    [InlineData(0.99, 0.90, 0.6, "fail: shorted turns")]
    [InlineData(0.5, 0.5, 1.0, "fail: one coil is shorted out, or the coils are wired in parallel")]
    public void The_pattern_of_deviations_names_the_cause(double ohms, double henries, double q, string expected) =>
        Assert.Equal(expected, Judge(ohms, henries, q).Verdict);

    [Fact]
    public void A_wrong_first_swing_or_a_reversed_pole_stops_the_piece_whatever_else_passes()
    {
        Assert.StartsWith("stop: reversed polarity", Judge(1, 1, 1, swing: 1).Verdict, StringComparison.Ordinal);
        Assert.Equal(
            "stop: pole 4 reversed",
            Judge(1, 1, 1, poles: new PoleReading([0.094, 0.097, 0.101, -0.096, 0.095, 0.098], 0.001)).Verdict
        );
    }

    [Fact]
    public void What_was_not_measured_holds_the_piece()
    {
        FinalTestVerdict verdict = s_test.Judge(
            new Dictionary<string, double> { ["dcResistance"] = 6200, ["inductance"] = 2.4 },
            firstSwing: -1
        );
        Assert.Equal("hold: Q not measured", verdict.Verdict);
        Assert.False(verdict.Passes);
    }

    [Fact] // (1,010 − 940)/975 = 7.2 %
    public void Six_poles_from_940_to_1010_gauss_spread_by_7_percent()
    {
        PoleReading poles = new([0.0940, 0.0970, 0.1010, 0.0980, 0.0975, 0.0975], 0.001);
        Assert.Equal(7, 100 * poles.Spread, 0.5);
        Assert.Equal(TestResult.Pass, poles.Judge().Result);
        Assert.Contains("spread 7 %", poles.Judge().Words, StringComparison.Ordinal);
        Assert.Equal(TestResult.Fail, poles.Judge(largestSpread: 0.05).Result);
        Assert.Equal([1, 2, 3, 4, 5, 6], poles.Reversed(northUp: -1)); // alike among themselves, and all against the recipe
    }

    [Fact]
    public void What_the_eye_finds_fails_too() =>
        Assert.Equal(
            "fail: looks",
            s_test
                .Judge(
                    new Dictionary<string, double>
                    {
                        ["dcResistance"] = 6200,
                        ["inductance"] = 2.4,
                        ["q"] = 7.6,
                    },
                    firstSwing: -1,
                    flaws: "scratch on the cover"
                )
                .Verdict
        );

    private static FinalTestVerdict Judge(double ohms, double henries, double q, int swing = -1, PoleReading? poles = null) =>
        s_test.Judge(
            new Dictionary<string, double>
            {
                ["dcResistance"] = 6200 * ohms,
                ["inductance"] = 2.4 * henries,
                ["q"] = 7.6 * q,
            },
            poles,
            firstSwing: swing
        );
}
