namespace Coilwright.Analysis.Diagnosis;

/// <summary>A cause by its name in the file format, its probability among those considered, and a word on its size.</summary>
public sealed record ProbableCause(string Name, double Probability, string Detail)
{
    /// <summary>True where the coil has it with others of its batch: it is said once for the batch and of no coil.</summary>
    public bool OfBatch { get; init; }
}
