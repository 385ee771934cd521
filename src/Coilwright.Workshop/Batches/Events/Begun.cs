namespace Coilwright.Workshop.Batches.Events;

/// <summary>A coil was put on a spindle.</summary>
public sealed record Begun : WinderEvent
{
    public override string Sentence => $"{Tag} begun on {(Machine.Length > 0 ? Machine : "a winder")}";
}
