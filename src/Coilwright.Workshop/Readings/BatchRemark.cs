using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Workshop.Readings;

/// <summary>What the coils of a batch have in common, said once and of no single coil.</summary>
/// <param name="Name">"wire-off", "turns-off", "inductance-off", "wire-changed" or "drift".</param>
/// <param name="Words">What it is, in workshop words.</param>
/// <param name="Evidence">What speaks for it.</param>
/// <param name="Check">The quickest check.</param>
/// <param name="From">Tag of the first coil that has it; empty where all have.</param>
public sealed record BatchRemark(string Name, string Words, string Evidence, string Check, string From)
{
    /// <summary>The remark with its quickest check.</summary>
    public string Sentence => $"{Words}; check first: {Check}";

    /// <summary>A finding in the words of the batch's tags.</summary>
    /// <param name="finding">What was found.</param>
    /// <param name="tagAt">Tag of the coil at a place.</param>
    internal static BatchRemark Of(BatchFinding finding, Func<int, string> tagAt)
    {
        string from = finding.Name == "wire-changed" ? tagAt(finding.From) : "",
            words = from.Length > 0 ? $"from {from} on {finding.Detail}" : finding.Detail;
        return new BatchRemark(finding.Name, words, finding.Evidence, finding.Check, from);
    }
}

/// <summary>A batch as judged.</summary>
/// <param name="Remarks">What its coils have in common; empty when nothing stands out.</param>
/// <param name="Verdicts">Verdicts of the coils that were asked for, in that order.</param>
public sealed record JudgedBatch(IReadOnlyList<BatchRemark> Remarks, IReadOnlyList<Verdict> Verdicts);
