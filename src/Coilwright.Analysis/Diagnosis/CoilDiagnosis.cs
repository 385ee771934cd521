namespace Coilwright.Analysis.Diagnosis;

/// <summary>What may be wrong with one coil.</summary>
/// <param name="Causes">Probable causes, most probable first; empty when nothing was measured.</param>
/// <param name="Next">Readings that would settle it, the most telling first; empty when nothing is open.</param>
public sealed record CoilDiagnosis(IReadOnlyList<ProbableCause> Causes, IReadOnlyList<NextReading> Next);
