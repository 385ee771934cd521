namespace Coilwright.Analysis.GaugeStudies;

/// <summary>Analysis of variance of groups: are their means the same?</summary>
/// <param name="Between">Between the groups.</param>
/// <param name="Within">Within them.</param>
public sealed record OneWayAnova(AnovaLine Between, AnovaLine Within)
{
    /// <summary>
    /// Null with fewer than two groups or no repeated value. Sums are taken about the first value, so that large numbers with small
    /// differences keep their digits.
    /// </summary>
    public static OneWayAnova? Compute(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        int count = groups.Sum(group => group.Count);
        if (groups.Count < 2 || groups.Any(group => group.Count == 0) || count <= groups.Count)
        {
            return null;
        }

        double about = groups[0][0];
        double[] means = [.. groups.Select(group => group.Average(value => value - about))];
        double mean = groups.Sum(group => group.Sum(value => value - about)) / count,
            between = 0,
            within = 0;
        for (int g = 0; g < groups.Count; g++)
        {
            between += groups[g].Count * (means[g] - mean) * (means[g] - mean);
            within += groups[g].Sum(value => (value - about - means[g]) * (value - about - means[g]));
        }

        return new OneWayAnova(new AnovaLine(between, groups.Count - 1), new AnovaLine(within, count - groups.Count));
    }

    /// <summary>Share of the variation that lies between the groups.</summary>
    public double RSquared => Between.Squares / (Between.Squares + Within.Squares);

    /// <summary>Standard deviation within the groups.</summary>
    public double Deviation => Math.Sqrt(Within.Mean);
}
