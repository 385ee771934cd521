using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Tests.Lay;

public sealed class SectionRandomTests
{
    [Fact] // Reference sequence for state {1, 2, 3, 4}, as printed in public test suites of the generator (read).
    public void Generator_repeats_the_published_sequence()
    {
        SectionRandom random = new(1, 2, 3, 4);
        ulong[] expected =
        [
            11520,
            0,
            1509978240,
            1215971899390074240,
            1216172134540287360,
            607988272756665600,
            16172922978634559625,
            8476171486693032832,
            10595114339597558777,
            2904607092377533576,
        ];
        Assert.All(expected, bits => Assert.Equal(bits, random.NextBits()));
    }

    [Fact] // Mean 0 and variance 1 by construction; the bounds are four standard errors of 100,000 draws.
    public void Normal_variate_has_mean_zero_and_variance_one()
    {
        SectionRandom random = new(7);
        double[] draws = [.. Enumerable.Range(0, 100_000).Select(_ => random.NextNormal())];
        Assert.InRange(draws.Average(), -4 / Math.Sqrt(1e5), 4 / Math.Sqrt(1e5));
        Assert.InRange(draws.Average(x => x * x), 1 - 4 * Math.Sqrt(2e-5), 1 + 4 * Math.Sqrt(2e-5));
    }
}
