namespace Coilwright.Workshop.Batches.Events;

/// <summary>More coils are wanted than the batch was begun with.</summary>
public sealed record MoreWanted : BatchEvent
{
    /// <summary>How many more.</summary>
    public required int Coils { get; init; }
    public required string Why { get; init; }

    public override string Sentence => $"{Count(Coils)} more wanted: {Why}";

    internal override bool IsSaidBy(BatchEventEntry said) =>
        Why == said.Note.Trim() && (said.CounterSaid is not { } coils || coils == Coils);
}
