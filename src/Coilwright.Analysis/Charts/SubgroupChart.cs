namespace Coilwright.Analysis.Charts;

/// <summary>How sigma is taken from subgroups.</summary>
public enum SubgroupSpread
{
    /// <summary>Mean range over d₂: X̄–R.</summary>
    Range,

    /// <summary>Mean standard deviation over c₄: X̄–S.</summary>
    StandardDeviation,
}

/// <summary>X̄–R or X̄–S chart: means and spreads of subgroups of one size.</summary>
/// <param name="Size">Values in a subgroup.</param>
/// <param name="Centre">Mean of the means.</param>
/// <param name="MeanSpread">Mean range or mean standard deviation.</param>
/// <param name="Spread">Which of the two.</param>
/// <remarks>Limits at three standard errors (Shewhart). Once fitted they stay: take them anew only on purpose, by fitting again.</remarks>
public sealed record SubgroupChart(int Size, double Centre, double MeanSpread, SubgroupSpread Spread)
{
    /// <summary>
    /// True to take d₂ to the three decimals of printed tables, as many published results do; it moves sigma by less than 0.03 %.
    /// </summary>
    public bool TableD2 { get; init; }

    private ChartConstants Constants => ChartConstants.ForSize(Size);
    private double D2 => TableD2 ? Math.Round(Constants.D2, 3) : Constants.D2;

    /// <summary>Standard deviation within a subgroup, from the mean spread.</summary>
    public double Sigma => MeanSpread / (Spread == SubgroupSpread.Range ? D2 : Constants.C4);

    /// <summary>Upper limit of the mean of a subgroup: three standard errors.</summary>
    public double UpperMean => Centre + 3 * Sigma / Math.Sqrt(Size);

    /// <summary>Lower limit of the mean of a subgroup.</summary>
    public double LowerMean => Centre - 3 * Sigma / Math.Sqrt(Size);

    /// <summary>Upper limit of the range or standard deviation of a subgroup, as <see cref="Spread"/> says.</summary>
    public double UpperSpread => Spread == SubgroupSpread.Range ? MeanSpread + 3 * Constants.D3 * Sigma : MeanSpread * Constants.B4;

    /// <summary>Lower limit of the same; never below zero.</summary>
    public double LowerSpread =>
        Spread == SubgroupSpread.Range ? Math.Max(0, MeanSpread - 3 * Constants.D3 * Sigma) : MeanSpread * Constants.B3;

    /// <summary>Fits the limits; null without subgroups, or when they are not all of one size of 2…50.</summary>
    public static SubgroupChart? Fit(IReadOnlyList<IReadOnlyList<double>> subgroups, SubgroupSpread spread)
    {
        int size = subgroups.Count == 0 ? 0 : subgroups[0].Count;
        return size is < 2 or > 50 || subgroups.Any(one => one.Count != size)
            ? null
            : new SubgroupChart(size, subgroups.Average(one => one.Average()), subgroups.Average(one => SpreadOf(one, spread)), spread);
    }

    /// <summary>Range or standard deviation of one subgroup.</summary>
    public static double SpreadOf(IReadOnlyList<double> subgroup, SubgroupSpread spread)
    {
        if (spread == SubgroupSpread.Range)
        {
            return subgroup.Max() - subgroup.Min();
        }

        double mean = subgroup.Average();
        return Math.Sqrt(subgroup.Sum(value => (value - mean) * (value - mean)) / (subgroup.Count - 1));
    }
}
