namespace Coilwright.Workshop.Batches.Events;

/// <summary>The break was spliced; the coil is marked.</summary>
public sealed record Spliced : SpindleEvent
{
    public override string Sentence => $"{Tag} spliced";
}
