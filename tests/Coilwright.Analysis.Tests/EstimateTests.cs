using Coilwright.Physics;

namespace Coilwright.Analysis.Tests;

public sealed class EstimateTests
{
    [Fact]
    public void A_symmetric_interval_and_its_deviation_are_two_ways_to_say_one_thing() =>
        Gen.Select(Gen.Double[-1e6, 1e6], Gen.Double[0, 1e3])
            .ForAll(
                (value, deviation) =>
                    Math.Abs(Estimate.FromDeviation(value, deviation, Basis.Forecast).StandardDeviation - deviation)
                    <= 1e-9 * (Math.Abs(value) + deviation)
            );
}
