namespace Coilwright.Physics.Tests;

public sealed class SimpsonRuleTests
{
    [Theory] // The rule is exact for a cubic: ∫₀¹ x³ − 2x² + 3x − 4 dx = 1/4 − 2/3 + 3/2 − 4.
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(10)]
    public void A_cubic_is_integrated_exactly(int intervals)
    {
        double Cubic(double x) => x * x * x - 2 * x * x + 3 * x - 4;
        double sum = Enumerable
            .Range(0, intervals + 1)
            .Sum(place => SimpsonRule.WeightAt(place, intervals) * Cubic(place / (double)intervals));
        Assert.Equal(0.25 - 2.0 / 3 + 1.5 - 4, sum / (3 * intervals), 1e-14);
    }
}
