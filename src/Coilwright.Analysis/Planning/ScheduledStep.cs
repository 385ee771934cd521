namespace Coilwright.Analysis.Planning;

/// <summary>One step of a plan; times in seconds from its start.</summary>
/// <param name="Job">Place in <see cref="JobList.Jobs"/>.</param>
/// <param name="Step">Place among the job's steps.</param>
/// <param name="Station">Place in <see cref="JobList.Stations"/>.</param>
/// <param name="StartS">Start, without the set-up before it.</param>
/// <param name="EndS">End.</param>
public readonly record struct ScheduledStep(int Job, int Step, int Station, double StartS, double EndS);
