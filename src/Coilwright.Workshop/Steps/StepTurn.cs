namespace Coilwright.Workshop.Steps;

/// <summary>A standing that comes about by time alone.</summary>
/// <param name="FromUtc">When it begins.</param>
/// <param name="Status">Where the piece then stands, if nothing is done to it.</param>
public sealed record StepTurn(DateTimeOffset FromUtc, StepStatus Status);
