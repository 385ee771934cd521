using Coilwright.Workshop.Instruments;

namespace Coilwright.Workshop.Tests.Instruments;

public sealed class StandstillTests
{
    private static readonly TimeSpan s_settle = TimeSpan.FromSeconds(0.3);

    [Fact]
    public void A_value_counts_once_it_has_stood_for_its_time()
    {
        Standstill still = new(s_settle, 0.001);
        Assert.Null(still.Add(At(0), 6000));
        Assert.Null(still.Add(At(0.2), 6001));
        Assert.Equal(6001, still.Add(At(0.31), 6002)!.Value, 1e-9);
        Assert.Null(still.Add(At(0.5), 6001)); // told once
        Assert.True(still.IsTold);
    }

    [Fact]
    public void Nothing_is_told_of_a_moving_needle()
    {
        Standstill still = new(s_settle, 0.001);
        for (int n = 0; n < 100; n++)
        {
            Assert.Null(still.Add(At(0.05 * n), 6000 + 20 * n));
        }
    }

    [Fact]
    public void What_moved_before_does_not_count()
    {
        Standstill still = new(s_settle, 0.001);
        still.Add(At(0), 3000);
        still.Add(At(0.1), 5900);
        Assert.Null(still.Add(At(0.35), 6000));
        Assert.Null(still.Add(At(0.5), 6000));
        Assert.Equal(6000, still.Add(At(0.66), 6000));
    }

    [Fact]
    public void The_next_one_counts_after_the_clips_were_off()
    {
        Standstill still = new(s_settle, 0.001);
        Assert.Equal(1, Told(still, 0, 6000));
        Assert.Equal(0, Told(still, 2, 6000)); // still the same coil
        still.Add(At(4), null);
        Assert.False(still.IsTold);
        Assert.Equal(1, Told(still, 5, 6000));
    }

    /// <summary>A coil that warms in the hand drifts on without ever jumping: it is told once, and not told anew as it drifts.</summary>
    [Fact]
    public void A_slow_drift_is_one_coil()
    {
        Standstill still = new(s_settle, 0.001);
        int told = 0;
        for (int n = 0; n < 600; n++)
        {
            told += still.Add(At(0.1 * n), 6000 * (1 + 0.00005 * n)) is null ? 0 : 1;
        }

        Assert.Equal(1, told);
    }

    private static int Told(Standstill still, double from, double value) =>
        Enumerable.Range(0, 10).Count(n => still.Add(At(from + 0.1 * n), value) is not null);

    private static TimeSpan At(double seconds) => TimeSpan.FromSeconds(seconds);
}
