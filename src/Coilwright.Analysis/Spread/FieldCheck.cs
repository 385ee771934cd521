namespace Coilwright.Analysis.Spread;

/// <summary>How far a run's model about one field solution was from full solutions at seeded samples of the draw.</summary>
/// <param name="Samples">Pieces solved in full.</param>
/// <param name="Quantities">By quantity.</param>
public sealed record FieldCheck(int Samples, IReadOnlyList<FieldCheckLine> Quantities);

/// <summary>One quantity.</summary>
/// <param name="Name">For example "inductance".</param>
/// <param name="Largest">Largest relative difference.</param>
/// <param name="Rms">Root of the mean square of the relative differences.</param>
public sealed record FieldCheckLine(string Name, double Largest, double Rms);
