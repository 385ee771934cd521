namespace Coilwright.Analysis.Diagnosis;

/// <summary>Something that the coils of a batch have in common: said once, and no coil is blamed for it.</summary>
/// <param name="Name">"wire-off", "turns-off", "inductance-off", "wire-changed" or "drift".</param>
/// <param name="Detail">What it is, in workshop words.</param>
/// <param name="Evidence">What speaks for it.</param>
/// <param name="Check">The quickest check. Common practice, no source.</param>
public sealed record BatchFinding(string Name, string Detail, string Evidence, string Check)
{
    /// <summary>Place of the first coil that has it; 0 where all have.</summary>
    public int From { get; init; }

    /// <summary>Label of the spool it is about; empty where it is about none.</summary>
    public string Spool { get; init; } = "";
}

/// <summary>What is said of a batch.</summary>
/// <param name="Findings">What its coils have in common; empty when nothing stands out.</param>
/// <param name="Coils">What is said of each coil that was asked for, against its batch, by its place.</param>
public sealed record BatchDiagnosis(IReadOnlyList<BatchFinding> Findings, IReadOnlyDictionary<int, CoilDiagnosis> Coils);
