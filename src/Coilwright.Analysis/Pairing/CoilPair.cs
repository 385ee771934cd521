namespace Coilwright.Analysis.Pairing;

/// <summary>Two coils that go together.</summary>
/// <param name="A">Place of the first coil in the list; of the first family when there are two.</param>
/// <param name="B">Place of the second coil.</param>
/// <param name="Difference">How far apart they are, or from the offset that is meant: a part of the smaller value, the weighted mean over
/// the quantities.</param>
public sealed record CoilPair(int A, int B, double Difference);
