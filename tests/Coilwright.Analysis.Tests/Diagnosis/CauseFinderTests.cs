using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Analysis.Tests.Diagnosis;

public sealed class CauseFinderTests
{
    private static readonly CoilEvidence s_wanted = new() { NominalOhm = 6200, NominalTurns = 8000, TemperatureKnown = true };

    [Fact] // 6.12 kΩ (nominal 6.20), L 2.44 H, Q(3 kHz) 4.4 against 7.6; the nominal L of 2.5 H is that of the same workshop's response example
    public void Story_17_a_fallen_Q_is_about_a_hundred_shorted_turns()
    {
        IReadOnlyList<ProbableCause> causes = CauseFinder.Find(s_wanted with { OhmAt20C = 6120, InductanceRatio = 2.44 / 2.5, QualityRatio = 4.4 / 7.6 });
        Assert.Equal("shorted-turns", causes[0].Name);
        Assert.True(causes[0].Probability > 0.8, $"{causes[0]}");
        int turns = int.Parse(causes[0].Detail.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(turns, 60, 150);
    }

    [Fact]
    public void Story_17_no_connection_is_open_and_says_to_reheat_the_joints()
    {
        ProbableCause first = CauseFinder.Find(s_wanted with { Open = true })[0];
        Assert.Equal(("open", "open: reheat the joints first"), (first.Name, first.Detail));
    }

    [Theory]
    [InlineData(260_000, 1, "broken-coupled")] // 0.26 MΩ
    [InlineData(3_100, 2, "coil-bridged")] // half of nominal on a series pair
    [InlineData(1_550, 2, "wired-parallel")] // a quarter
    public void Story_17_ohms_alone_tell_these(double ohm, int coils, string cause)
    {
        ProbableCause first = CauseFinder.Find(s_wanted with { OhmAt20C = ohm, CoilsInSeries = coils })[0];
        Assert.Equal(cause, first.Name);
        Assert.True(first.Probability > 0.7, $"{first}");
    }

    [Theory]
    [InlineData(1.055, 1.00, 1.0, "thin-wire")] // ohms up, henries as they were
    [InlineData(0.945, 1.00, 1.0, "thick-wire")]
    [InlineData(1.052, 1.10, 1.0, "miscount")] // both up, henries by twice as much
    [InlineData(0.948, 0.90, 1.0, "miscount")]
    [InlineData(0.948, 0.90, 0.95, "miscount")] // and the counter says so
    [InlineData(1.262, 1.00, 1.0, "wrong-gauge")] // one AWG too thin
    [InlineData(0.100, 1.00, 1.0, "meter-error")] // a factor of ten in ohms alone
    public void Ohms_with_henries_tell_these_apart(double ohms, double henries, double turns, string cause)
    {
        IReadOnlyList<ProbableCause> causes = CauseFinder.Find(s_wanted with { OhmAt20C = 6200 * ohms, InductanceRatio = henries, TurnsRatio = turns });
        Assert.True(causes[0].Name == cause, string.Join("; ", causes));
    }

    [Fact]
    public void Without_a_temperature_a_little_too_much_is_a_warm_coil_first_and_with_one_it_is_the_wire()
    {
        CoilEvidence high = s_wanted with { OhmAt20C = 6200 * 1.05, InductanceRatio = 1 };
        Assert.Equal("warm-coil", CauseFinder.Find(high with { TemperatureKnown = false })[0].Name);
        Assert.Equal("thin-wire", CauseFinder.Find(high)[0].Name);
    }

    [Fact]
    public void Bridged_and_parallel_are_not_thought_of_where_there_is_one_coil() =>
        Assert.DoesNotContain(CauseFinder.Find(s_wanted with { OhmAt20C = 3100 }), cause => cause.Name is "coil-bridged" or "wired-parallel");

    [Fact]
    public void A_coil_as_wanted_has_most_probably_nothing()
    {
        ProbableCause first = CauseFinder.Find(s_wanted with { OhmAt20C = 6210, InductanceRatio = 1.002 })[0];
        Assert.Equal("none", first.Name);
        Assert.True(first.Probability > 0.9, $"{first}");
    }

    [Fact]
    public void Nothing_measured_tells_nothing() => Assert.Empty(CauseFinder.Find(s_wanted));

    [Fact]
    public void Probabilities_are_whole_and_in_order_for_any_reading() =>
        Gen.Select(Gen.Double[-9, 9], Gen.Double[-3, 1], Gen.Bool).ForAll((ohm, henry, hasHenry) =>
        {
            IReadOnlyList<ProbableCause> causes = CauseFinder.Find(s_wanted with { OhmAt20C = 6200 * Math.Exp(ohm), InductanceRatio = hasHenry ? Math.Exp(henry) : null });
            double sum = causes.Sum(cause => cause.Probability);
            return causes.Count > 0 && sum <= 1 + 1e-9 && sum > 0.85 && causes.Zip(causes.Skip(1)).All(pair => pair.First.Probability >= pair.Second.Probability);
        });
}
