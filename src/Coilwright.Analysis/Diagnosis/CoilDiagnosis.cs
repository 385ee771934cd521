namespace Coilwright.Analysis.Diagnosis;

/// <summary>What may be wrong with one coil.</summary>
/// <param name="Causes">Probable causes, most probable first; empty when nothing was measured.</param>
/// <param name="Next">Readings that would settle it, the most telling first; empty when nothing is open.</param>
public sealed record CoilDiagnosis(IReadOnlyList<ProbableCause> Causes, IReadOnlyList<NextReading> Next)
{
    /// <summary>
    /// The likeliest fault of the coil itself, and with it those that the readings cannot tell from it, the likeliest first; empty without.
    /// </summary>
    public IReadOnlyList<string> Group { get; init; } = [];
}
