namespace Coilwright.Demo;

/// <summary>A clock that the demo sets: a morning's work is entered in a second, each coil at its own time.</summary>
internal sealed class DemoClock(DateTimeOffset start) : TimeProvider
{
    private DateTimeOffset _now = start;

    public override DateTimeOffset GetUtcNow() => _now;

    public void Advance(TimeSpan by) => _now += by;
}
