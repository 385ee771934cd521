namespace Coilwright.Workshop.Batches.Events;

/// <summary>A signal of the batch's chart was looked into; those of earlier coils are answered with it.</summary>
public sealed record SignalAnswered : BatchEvent
{
    /// <summary>What was found, or done about it.</summary>
    public required string Found { get; init; }

    public override string Sentence => $"signal at {Tag} looked into: {Found}";

    internal override bool IsSaidBy(BatchEventEntry said) => Found == said.Note.Trim();
}
