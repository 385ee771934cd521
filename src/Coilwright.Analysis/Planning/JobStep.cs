namespace Coilwright.Analysis.Planning;

/// <summary>A step of a job, done in one go.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="On">Where it can be done, one or more.</param>
public sealed record JobStep(string Name, IReadOnlyList<StepOption> On)
{
    /// <summary>What the station must be set up for; null when it needs nothing and leaves nothing changed for others.</summary>
    public string? Family { get; init; }

    /// <summary>Least time from its end to the start of the next step, s.</summary>
    public double MinGapS { get; init; }

    /// <summary>Most time from its end to the start of the next step, s; null when it may wait.</summary>
    public double? MaxGapS { get; init; }
}
