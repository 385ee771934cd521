namespace Coilwright.Workshop.Steps;

/// <summary>One step as it was done on one piece or basket.</summary>
/// <param name="Step">Word for the step.</param>
/// <param name="BegunUtc">When it began; of a beginning told late, by how long the tablet says it waited.</param>
/// <param name="EndedUtc">When the shop heard that it ended, also of an end told late, so that a tablet's clock shortens no hold; null
/// while it goes on.</param>
public sealed record StepRun(string Step, DateTimeOffset BegunUtc, DateTimeOffset? EndedUtc);
