using Coilwright.Analysis.Comparisons;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Papers.Tests.Figures;

/// <summary>What a player would hear, in words that the intervals bear.</summary>
public sealed class CompareSentenceTests
{
    [Fact]
    public void A_change_that_its_interval_bears_is_told_with_it() =>
        Assert.Equal(
            "B is 2.1 ±0.9 dB louder than A; its peak is 620 Hz ±100 Hz lower and stands 1.3 ±0.4 dB higher.",
            CompareSentence.Of("A", "B", [Output(1.274, 1.15, 1.41), Peak(-620, 100), Height(1.3, 0.4)])
        );

    [Fact]
    public void A_change_within_its_interval_is_not_told() =>
        Assert.Equal(
            "B is as loud as A, as far as the intervals tell; its peak is 620 Hz ±100 Hz higher.",
            CompareSentence.Of("A", "B", [Output(1.05, 0.95, 1.15), Peak(620, 100), Height(0.1, 0.4)])
        );

    [Fact]
    public void Nothing_that_the_intervals_bear_is_said_so() =>
        Assert.Equal(
            "Between B and A there is no difference in loudness or peak that the intervals would show.",
            CompareSentence.Of("A", "B", [Output(1.01, 0.9, 1.1), Peak(20, 100), Height(0.1, 0.4)])
        );

    [Fact]
    public void A_peak_that_is_gone_is_told() =>
        Assert.Equal(
            "B is as loud as A, as far as the intervals tell; it has no peak.",
            CompareSentence.Of("A", "B", [Output(1.01, 0.9, 1.1), new("loadedPeak", "Hz", Estimate.Exact(3000), null, null, null)])
        );

    private static ComparisonLine Output(double ratio, double low, double high) =>
        new("output", "V·s/m", Estimate.Exact(1), Estimate.Exact(ratio), null, new Estimate(ratio, low, high, Basis.Forecast));

    private static ComparisonLine Peak(double hz, double half) =>
        new("loadedPeak", "Hz", Estimate.Exact(3000), Estimate.Exact(3000 + hz), Change(hz, half), null);

    private static ComparisonLine Height(double db, double half) =>
        new("loadedPeakGain", "dB", Estimate.Exact(4), Estimate.Exact(4 + db), Change(db, half), null);

    private static Estimate Change(double value, double half) => new(value, value - half, value + half, Basis.Forecast);
}
