namespace Coilwright.Analysis.Planning;

/// <summary>What is to be planned. Times are seconds from the start of the plan.</summary>
/// <param name="Stations">Where work is done, one step at a time each.</param>
/// <param name="Jobs">What must be done.</param>
/// <param name="SetUps">Times between steps of different families; a pair that is not named takes none.</param>
/// <param name="Want">What is to be small.</param>
public sealed record JobList(
    IReadOnlyList<Station> Stations,
    IReadOnlyList<Job> Jobs,
    IReadOnlyList<SetUpTime> SetUps,
    PlanObjective Want = PlanObjective.Makespan
);
