namespace Coilwright.Analysis.Planning;

/// <summary>What a plan keeps small.</summary>
public enum PlanObjective
{
    /// <summary>The time at which everything is done.</summary>
    Makespan,

    /// <summary>The sum over jobs of weight times how late each is.</summary>
    Tardiness,
}
