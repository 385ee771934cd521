namespace Coilwright.Workshop.Batches.Events;

/// <summary>The first piece was looked at and the series released.</summary>
public sealed record Released : WinderEvent
{
    public override string Sentence => $"series released{(Note.Length > 0 ? $": {Note}" : "")}";
}
