namespace Coilwright.Web.Tests;

/// <summary>Time that passes when it is told to; waits are real.</summary>
internal sealed class PassingClock : TimeProvider
{
    private readonly DateTimeOffset _start = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);
    private TimeSpan _passed;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public void Pass(TimeSpan more) => _passed += more;

    public override DateTimeOffset GetUtcNow() => _start + _passed;

    public override long GetTimestamp() => _passed.Ticks;
}
