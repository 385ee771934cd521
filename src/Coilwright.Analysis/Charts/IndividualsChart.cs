namespace Coilwright.Analysis.Charts;

/// <summary>A chart of single values in the order they were made, with limits from the moving range.</summary>
/// <param name="Centre">Mean of the values the limits were taken from.</param>
/// <param name="MeanMovingRange">Mean absolute difference of neighbours among them.</param>
/// <remarks>
/// Limits: centre ± 3·MR̄/d₂ with d₂ = 1.128 for two values, that is ± 2.66·MR̄ (NIST/SEMATECH e-Handbook 6.3.2.2; factor from the ASTM
/// table of constants,
/// both read in reproductions).
/// </remarks>
public sealed record IndividualsChart(double Centre, double MeanMovingRange)
{
    /// <summary>Expected range of two values over their standard deviation, to the three decimals of the published tables.</summary>
    public const double D2 = 1.128;

    /// <summary>Limits are taken from this many first values, or from all when there are fewer.</summary>
    public const int UsualBase = 20;

    /// <summary>Standard deviation estimated from the moving range.</summary>
    public double Sigma => MeanMovingRange / D2;

    /// <summary>Upper limit of a value: centre + 3 sigma.</summary>
    public double UpperLimit => Centre + 3 * Sigma;

    /// <summary>Lower limit of a value: centre − 3 sigma.</summary>
    public double LowerLimit => Centre - 3 * Sigma;

    /// <summary>Takes the limits from the first values; null when there are fewer than two.</summary>
    public static IndividualsChart? Fit(IReadOnlyList<double> values, int usedFirst = UsualBase)
    {
        double[] used = [.. values.Take(usedFirst)];
        return used.Length < 2 ? null : new IndividualsChart(used.Average(), used.Zip(used.Skip(1), (a, b) => Math.Abs(b - a)).Average());
    }

    /// <summary>Where the run breaks one of the Western Electric rules, at the point that completes it.</summary>
    public IReadOnlyList<RunSignal> Signals(IReadOnlyList<double> values) => RunRules.WesternElectric(values, Centre, Sigma);
}
