namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A step begun or ended.</summary>
public abstract record StepEvent : PieceEvent
{
    /// <summary>Word of the step.</summary>
    public required string Step { get; init; }
}
