namespace Coilwright.Workshop.Batches.Events;

/// <summary>The machine was stopped on purpose, with the counter noted.</summary>
public sealed record Paused : SpindleEvent
{
    public override string Sentence => $"{Tag} paused at {Count(Counter)}";

    internal override SpindleState StateAfter => SpindleState.Paused;
}
