using Coilwright.Analysis.Spread;

namespace Coilwright.Analysis.Tests.Spread;

/// <summary>What a run's spread comes to, from runs made for it.</summary>
public sealed class SpreadLeadTests
{
    private static readonly SpreadTarget s_target = new(100, 90, 110);

    [Fact]
    public void What_brings_most_pieces_within_limits_comes_first_and_what_widens_is_left_out()
    {
        SpreadLead lead = SpreadLead.Of(
            Run(
                0.2,
                [Quantity("dcResistance", 8, s_target), Quantity("inductance", 3, null)],
                Remedy("small", 7, 3, 0.15),
                Remedy("worse", 20, 9, 0.6),
                Remedy("large", 3, 3, 0.001),
                Remedy("other", 8, 0.5, 0.2)
            )
        );
        Assert.Equal(0.8, lead.Within!.Value, 1e-12);
        Assert.Equal("dcResistance", Assert.Single(lead.Led).Name);
        Assert.Equal(["large", "small"], lead.Remedies.Select(one => one.Remedy.Remedy));
        Assert.Equal((0.999, 0.375), (lead.Remedies[0].Within!.Value, lead.Remedies[0].Left));
        Assert.Equal("dcResistance", lead.Remedies[0].Most!.Name);
    }

    [Fact]
    public void Without_limits_the_resistance_leads_and_what_narrows_it_most_comes_first()
    {
        SpreadLead lead = SpreadLead.Of(
            Run(
                null,
                [Quantity("dcResistance", 8, null), Quantity("inductance", 3, null)],
                Remedy("a", 6, 1, null),
                Remedy("b", 2, 3, null)
            )
        );
        Assert.Null(lead.Within);
        Assert.Equal(["b", "a"], lead.Remedies.Select(one => one.Remedy.Remedy));
    }

    [Fact]
    public void A_piece_counts_as_outside_when_it_misses_one_target_or_another()
    {
        Dictionary<string, SpreadTarget> targets = new() { ["dcResistance"] = new(6100, 6000, 6250), ["inductance"] = new(2.5, 2.45, 2.6) };
        RunSpread run = RunForecaster.Spread(
            Pickups.Single(),
            null,
            targets,
            samples: 1000,
            seed: 3,
            cancel: TestContext.Current.CancellationToken
        );
        double[] each = [.. run.Quantities.Select(one => one.OutsideTarget).OfType<double>()];
        Assert.Equal(2, each.Length);
        Assert.InRange(run.OutsideAny!.Value, each.Max(), Math.Min(1, each.Sum()));
        Assert.All(run.Remedies, remedy => Assert.InRange(remedy.OutsideAny!.Value, remedy.OutsideTarget.Values.Max(), 1));
    }

    private static RunSpread Run(double? outside, QuantitySpread[] quantities, params SpreadRemedy[] remedies) =>
        new(1000, 1, quantities, remedies, 0) { OutsideAny = outside };

    private static QuantitySpread Quantity(string name, double deviation, SpreadTarget? target) =>
        new()
        {
            Name = name,
            Unit = "1",
            Mean = 100,
            StandardDeviation = deviation,
            Low = 100 - 2 * deviation,
            High = 100 + 2 * deviation,
            WithinRun = deviation,
            Target = target,
            Causes = [],
            Histogram = [1],
        };

    private static SpreadRemedy Remedy(string key, double ohms, double henries, double? outside) =>
        new(
            key,
            key,
            new Dictionary<string, double> { ["dcResistance"] = ohms, ["inductance"] = henries },
            new Dictionary<string, double>()
        )
        {
            OutsideAny = outside,
        };
}
