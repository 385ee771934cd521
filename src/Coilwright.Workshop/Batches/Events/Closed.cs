namespace Coilwright.Workshop.Batches.Events;

/// <summary>The batch ends before its number: nothing more is wound or entered, until it is reopened.</summary>
public sealed record Closed : BatchEvent
{
    /// <summary>Coils that were wound and read by then.</summary>
    public required int Coils { get; init; }

    /// <summary>Coils that were wanted.</summary>
    public required int Wanted { get; init; }
    public required string Why { get; init; }

    public override string Sentence => $"closed with {Count(Coils)} of {Count(Wanted)} coils: {Why}";

    internal override bool IsSaidBy(BatchEventEntry said) => Why == said.Note.Trim();
}
