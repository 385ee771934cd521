namespace Coilwright.Workshop.Steps;

/// <summary>Where a piece stands among its steps.</summary>
/// <param name="State">The state.</param>
/// <param name="Step">The step that goes on, or the one that comes next; empty when all is done.</param>
/// <param name="ChangesUtc">When the state changes by itself, or null.</param>
/// <param name="Words">The same for people.</param>
public sealed record StepStatus(StepState State, string Step, DateTimeOffset? ChangesUtc, string Words)
{
    /// <summary>The hold that a person or an alarm put on it and that only a person lifts; null when none runs.</summary>
    public Hold? HeldBy { get; init; }

    /// <summary>True when it stands until a person does something about it: no clock lets it go on.</summary>
    public bool NeedsPerson => State == StepState.Held && (HeldBy is not null || ChangesUtc is null);
}
