namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>A batch in a list.</summary>
/// <param name="Batch">The record.</param>
/// <param name="RecipeName">Name of its recipe.</param>
/// <param name="RevisionLetter">Letter of its revision.</param>
/// <param name="Summary">How it stands.</param>
public sealed record BatchLine(BatchRecord Batch, string RecipeName, string RevisionLetter, BatchSummary Summary);
