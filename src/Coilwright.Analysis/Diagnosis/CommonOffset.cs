namespace Coilwright.Analysis.Diagnosis;

/// <summary>What the coils of a batch have in common in one logarithm (inductance or Q), learnt from all of them.</summary>
/// <param name="Mean">Where the batch lies against what was wanted.</param>
/// <param name="Deviation">How well that is known.</param>
internal readonly record struct CommonOffset(double Mean, double Deviation)
{
    /// <summary>Fewer coils than this do not tell a batch from a fault.</summary>
    public const int Fewest = 4;

    /// <summary>The median's variance over that of a mean for normal values: π/2.</summary>
    private const double MedianLoss = Math.PI / 2;

    /// <summary>Learns from the median, so that a few faults do no harm.</summary>
    /// <remarks>
    /// A median out of the prior's reach belongs to the batch all the same (target, meter, counter, magnets) and to no coil.
    /// </remarks>
    /// <param name="others">Number of values, their median, and the median distance from it.</param>
    /// <param name="priorDeviation">How far a batch may lie off, standard deviation.</param>
    /// <param name="scatter">Least deviation of one coil from the next.</param>
    public static CommonOffset Learn((int Count, double Median, double Distance) others, double priorDeviation, double scatter)
    {
        if (others.Count < Fewest)
        {
            return new CommonOffset(0, priorDeviation);
        }

        double median = others.Median,
            spread = Math.Max(scatter, 1.4826 * others.Distance);
        double error = spread * spread * MedianLoss / others.Count,
            prior = priorDeviation * priorDeviation;
        return Math.Abs(median) > 3 * Math.Sqrt(prior + error)
            ? new CommonOffset(median, Math.Sqrt(error))
            : new CommonOffset(median * prior / (prior + error), Math.Sqrt(prior * error / (prior + error)));
    }
}
