namespace Coilwright.Workshop.Batches.Events;

/// <summary>The wire broke, with the counter noted.</summary>
public sealed record Broken : SpindleEvent
{
    public override string Sentence => $"{Tag} broke at {Count(Counter)}";

    internal override SpindleState StateAfter => SpindleState.Broken;
}
