namespace Coilwright.Analysis.Planning;

/// <summary>A job that is not done by its due time.</summary>
/// <param name="Job">Place in <see cref="JobList.Jobs"/>.</param>
/// <param name="ByS">How late, s.</param>
/// <param name="Cause">What holds it up, the nearest to its end.</param>
/// <param name="Step">The step that is held up.</param>
public sealed record LateJob(int Job, double ByS, LateCause Cause, int Step)
{
    /// <summary>The step that the station is busy with; null for other causes.</summary>
    public ScheduledStep? Busy { get; init; }

    /// <summary>The station that is busy or closed.</summary>
    public int? Station { get; init; }

    /// <summary>Until when it is held up, s: its start, or the start of the set-up before it.</summary>
    public double UntilS { get; init; }
}
