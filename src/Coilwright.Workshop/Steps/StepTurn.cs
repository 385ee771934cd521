namespace Coilwright.Workshop.Steps;

/// <summary>A standing that comes about by time alone.</summary>
/// <param name="FromUtc">When it begins.</param>
/// <param name="Standing">Where the piece then stands, if nothing is done to it.</param>
public sealed record StepTurn(DateTimeOffset FromUtc, StepStanding Standing);
