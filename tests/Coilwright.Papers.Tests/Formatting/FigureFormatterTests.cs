using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Papers.Tests.Formatting;

public sealed class FigureFormatterTests
{
    /// <summary>A share of nothing that may be something is told without digits that it does not have.</summary>
    [Fact]
    public void Nothing_is_told_in_the_unit_of_what_it_may_be()
    {
        Figure share = Example.Forecast.Capacitance with { Estimate = new Estimate(0, 0, 30.3e-12, Basis.Forecast) };
        Assert.Equal("0 pF (0 pF – 30.3 pF)", FigureFormatter.WithInterval(share));
    }
}
