namespace Coilwright.Workshop.Steps;

/// <summary>One step as it was done on one piece or basket.</summary>
/// <param name="Step">Word for the step.</param>
/// <param name="BegunUtc">When it began.</param>
/// <param name="EndedUtc">When it ended; null while it goes on.</param>
public sealed record StepRun(string Step, DateTimeOffset BegunUtc, DateTimeOffset? EndedUtc);
