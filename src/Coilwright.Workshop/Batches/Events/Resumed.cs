namespace Coilwright.Workshop.Batches.Events;

/// <summary>Winding went on.</summary>
public sealed record Resumed : SpindleEvent
{
    public override string Sentence => $"{Tag} resumed";
}
