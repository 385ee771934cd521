using Coilwright.Analysis.Planning;

namespace Coilwright.Application.Plans;

/// <summary>A person asks when and where each step is to be done.</summary>
public sealed class PlanJobs
{
    /// <summary>The best plan found.</summary>
    /// <param name="list">What is to be planned.</param>
    /// <param name="seconds">Longest search, s.</param>
    /// <param name="cancel">Stops it; the best plan by then is the answer.</param>
    public Schedule Plan(JobList list, double seconds, CancellationToken cancel) => JobPlanner.Plan(list, seconds, cancel);
}
