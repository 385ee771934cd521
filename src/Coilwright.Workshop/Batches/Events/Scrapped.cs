namespace Coilwright.Workshop.Batches.Events;

/// <summary>The coil was scrapped and its wire lost.</summary>
public sealed record Scrapped : SpindleEvent
{
    public override string Sentence => $"{Tag} scrapped";
}
