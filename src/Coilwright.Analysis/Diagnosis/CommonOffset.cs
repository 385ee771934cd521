namespace Coilwright.Analysis.Diagnosis;

/// <summary>What the coils of a batch have in common in one logarithm (inductance or Q), learnt from all of them.</summary>
/// <param name="Mean">Where the batch lies against what was wanted.</param>
/// <param name="Deviation">How well that is known.</param>
internal readonly record struct CommonOffset(double Mean, double Deviation)
{
    /// <summary>Fewer coils than this do not tell a batch from a fault.</summary>
    private const int Fewest = 4;

    /// <summary>The median's variance over that of a mean for normal values: π/2.</summary>
    private const double MedianLoss = Math.PI / 2;

    /// <summary>Learns from the median, so that a few faults do no harm. A median out of the prior's reach is no offset but a fault of all, and is left to be found.</summary>
    public static CommonOffset Learn(IEnumerable<double> logs, double priorDeviation, double scatter)
    {
        double[] sorted = [.. logs.Order()];
        if (sorted.Length < Fewest)
        {
            return new CommonOffset(0, priorDeviation);
        }

        double median = Middle(sorted), spread = Math.Max(scatter, 1.4826 * Middle([.. sorted.Select(log => Math.Abs(log - median)).Order()]));
        double error = spread * spread * MedianLoss / sorted.Length, prior = priorDeviation * priorDeviation;
        return Math.Abs(median) > 3 * Math.Sqrt(prior + error)
            ? new CommonOffset(0, priorDeviation)
            : new CommonOffset(median * prior / (prior + error), Math.Sqrt(prior * error / (prior + error)));
    }

    private static double Middle(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}
