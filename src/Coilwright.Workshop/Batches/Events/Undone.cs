namespace Coilwright.Workshop.Batches.Events;

/// <summary>Another event was taken back.</summary>
public sealed record Undone : BatchEvent
{
    /// <summary>The event taken back.</summary>
    public required Guid Undoes { get; init; }

    public override string Sentence => "undone";
}
