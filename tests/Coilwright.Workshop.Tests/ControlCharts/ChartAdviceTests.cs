using Coilwright.Workshop.ControlCharts;

namespace Coilwright.Workshop.Tests.ControlCharts;

/// <summary>What a signal says and what to do about it, from runs made for it.</summary>
public sealed class ChartAdviceTests
{
    [Fact]
    public void A_run_that_moved_says_how_far_and_what_to_check()
    {
        double[] values = [.. Enumerable.Range(0, 40).Select(k => 6180 + 12 * ((k * 7 % 5) - 2) + (k >= 28 ? 40.0 : 0))];
        ChartAdvice advice = ChartAdvice.Of(Build(values))!;
        Assert.Equal(SignalSense.Shift, advice.Sense);
        Assert.Equal(39, advice.Run.Last.Index);
        Assert.InRange(advice.OffSi, 20, 55); // 40 above what the first twenty centre on, less coils from before the step
        Assert.Contains("counter", advice.Do, StringComparison.Ordinal);
    }

    [Fact]
    public void One_coil_far_off_is_read_again()
    {
        double[] values = [.. Enumerable.Range(0, 30).Select(k => 6180 + 12 * ((k * 7 % 5) - 2) + (k == 29 ? 160.0 : 0))];
        ChartAdvice? advice = ChartAdvice.Of(Build(values));
        Assert.NotNull(advice);
        Assert.Equal(29, advice.Run.Last.Index);
        Assert.Equal(SignalSense.OneCoil, advice.Sense);
    }

    [Fact]
    public void A_quiet_run_needs_nothing() =>
        Assert.Null(ChartAdvice.Of(Build([.. Enumerable.Range(0, 30).Select(k => 6180 + 12.0 * ((k * 7 % 5) - 2))])));

    private static ControlChart Build(double[] values) =>
        ControlChartBuilder.Build(
            new ChartSettings(),
            [.. values.Select((value, place) => new ChartedCoil(FormattableString.Invariant($"C-{place + 1:000}"), value))],
            null
        )!;
}
