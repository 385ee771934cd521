namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>A summary as it stands in the store.</summary>
/// <param name="Summary">The summary; null when what is kept cannot be read or contradicts itself.</param>
/// <param name="Complaint">Why not, in words; empty otherwise.</param>
/// <param name="Text">What is kept, by which two looks are told apart.</param>
public sealed record KeptSummary(BatchSummary? Summary, string Complaint, string Text);
