namespace Coilwright.Demo;

/// <summary>A clock that the demo sets: days of work are entered in a second, each thing at its own time.</summary>
internal sealed class DemoClock(DateTimeOffset start) : TimeProvider
{
    private DateTimeOffset _now = start;

    public override DateTimeOffset GetUtcNow() => _now;

    public void Advance(TimeSpan by) => _now += by;

    public void MoveTo(DateTimeOffset time) => _now = time > _now ? time : _now;
}
