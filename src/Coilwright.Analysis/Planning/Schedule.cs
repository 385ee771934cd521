namespace Coilwright.Analysis.Planning;

/// <summary>When and where each step is done.</summary>
/// <param name="Steps">Every step, by start; empty when there is no plan.</param>
public sealed record Schedule(IReadOnlyList<ScheduledStep> Steps)
{
    /// <summary>True when there is a plan.</summary>
    public bool Feasible => Steps.Count > 0;

    /// <summary>True when no plan has less of what was wanted.</summary>
    public bool Optimal { get; init; }

    /// <summary>True when it was proved that there is no plan.</summary>
    public bool ProvedImpossible { get; init; }

    /// <summary>True when the search was stopped before its time.</summary>
    public bool Stopped { get; init; }

    /// <summary>When everything is done, s.</summary>
    public double MakespanS => Steps.Select(step => step.EndS).DefaultIfEmpty(0).Max();

    /// <summary>Sum over jobs of weight times how late each is, s.</summary>
    public double TardinessS { get; init; }

    /// <summary>No plan has less than this of what was wanted, s.</summary>
    public double BoundS { get; init; }

    /// <summary>Jobs that are late, the latest first, with what makes them so.</summary>
    public IReadOnlyList<LateJob> Late { get; init; } = [];

    /// <summary>Places of jobs that cannot be done even alone, when there is no plan.</summary>
    public IReadOnlyList<int> ImpossibleAlone { get; init; } = [];

    /// <summary>What was wanted, as this plan has it, s.</summary>
    /// <param name="want">What is to be small.</param>
    public double ValueS(PlanObjective want) => want == PlanObjective.Tardiness ? TardinessS : MakespanS;

    /// <summary>Part of the value that the bound leaves open, 0…1.</summary>
    /// <param name="want">What is to be small.</param>
    public double Gap(PlanObjective want) => ValueS(want) > 0 ? Math.Max(0, 1 - BoundS / ValueS(want)) : 0;
}
