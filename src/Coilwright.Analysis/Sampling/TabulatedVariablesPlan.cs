namespace Coilwright.Analysis.Sampling;

/// <summary>A plan by variables from the tables: accept when the estimated part beyond the limits is at most M.</summary>
/// <param name="Size">Pieces measured.</param>
/// <param name="LargestBeyond">M, a part of one.</param>
/// <param name="K">The same for one limit as a distance in spreads; derived from M.</param>
public sealed record TabulatedVariablesPlan(int Size, double LargestBeyond, double K)
{
    /// <summary>Whether a lot is accepted: the parts beyond both limits together count.</summary>
    /// <param name="values">As many values as <see cref="Size"/>.</param>
    /// <param name="lower">Lower limit, or null.</param>
    /// <param name="upper">Upper limit, or null.</param>
    public (bool Accept, double Beyond) Judge(IReadOnlyList<double> values, double? lower, double? upper)
    {
        double mean = values.Average(),
            spread = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
        if (spread <= 0)
        {
            bool inside = !(mean < lower) && !(mean > upper);
            return (inside, inside ? 0 : 1);
        }

        double beyond =
            (upper is { } top ? VariablesPlan.EstimatedBeyond(mean, spread, top, values.Count, spreadKnown: false) : 0)
            + (lower is { } bottom ? VariablesPlan.EstimatedBeyond(-mean, spread, -bottom, values.Count, spreadKnown: false) : 0);
        return (beyond <= LargestBeyond, Math.Min(1, beyond));
    }
}
