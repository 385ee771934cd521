namespace Coilwright.Workshop.Steps;

/// <summary>Where a piece stands among its steps.</summary>
/// <param name="State">The state.</param>
/// <param name="Step">The step that goes on, or the one that comes next; empty when all is done.</param>
/// <param name="ChangesUtc">When the state changes by itself, or null.</param>
/// <param name="Words">The same for people.</param>
public sealed record StepStanding(StepState State, string Step, DateTimeOffset? ChangesUtc, string Words);
