namespace Coilwright.Analysis.Sampling;

/// <summary>One sample of a plan by attributes.</summary>
/// <param name="Size">Pieces drawn in this stage.</param>
/// <param name="Accept">Accept the lot when so many or fewer defective pieces have been found in all stages so far; −1 when it cannot be
/// accepted yet.</param>
/// <param name="Reject">Reject it when so many or more have been found.</param>
public readonly record struct SampleStage(int Size, int Accept, int Reject);
