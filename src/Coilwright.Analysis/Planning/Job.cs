namespace Coilwright.Analysis.Planning;

/// <summary>Work whose steps follow one another.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Steps">Its steps, in order, one or more.</param>
public sealed record Job(string Name, IReadOnlyList<JobStep> Steps)
{
    /// <summary>When it can begin, s.</summary>
    public double ReleaseS { get; init; }

    /// <summary>When it should be done, s; null when any time will do.</summary>
    public double? DueS { get; init; }

    /// <summary>How much its being late counts, zero or more.</summary>
    public double Weight { get; init; } = 1;
}
