namespace Coilwright.Workshop.Steps;

/// <summary>A mix of ink or a reading of a bath that was entered wrongly and taken back. Never edited.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="About">The mix or the reading.</param>
/// <param name="Reason">What was entered wrongly.</param>
/// <param name="Person">Who took it back.</param>
/// <param name="TimeUtc">When.</param>
public sealed record StepUndoRecord(Guid Id, Guid About, string Reason, string Person, DateTimeOffset TimeUtc);
