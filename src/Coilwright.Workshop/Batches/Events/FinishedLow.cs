namespace Coilwright.Workshop.Batches.Events;

/// <summary>The coil was ended at the turns it had.</summary>
public sealed record FinishedLow : SpindleEvent
{
    public override string Sentence => $"{Tag} ended low";

    internal override SpindleState StateAfter => SpindleState.Ended;
}
