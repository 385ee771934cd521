namespace Coilwright.Analysis.Diagnosis;

/// <summary>What is off for all coils of a batch alike, so that no single coil is to blame.</summary>
public static class WholeBatch
{
    /// <summary>Fewer coils do not tell a batch from a fault. Our assumption.</summary>
    private const int Fewest = 5;

    /// <summary>Less than this is not worth telling, in logarithms. Our assumption.</summary>
    private const double Least = 0.02;

    /// <summary>The median of ln L over wanted, where the whole batch is off; null otherwise.</summary>
    /// <param name="henries">ln of each inductance over the wanted one.</param>
    public static double? InductanceOff(IReadOnlyCollection<double> henries)
    {
        if (henries.Count < Fewest)
        {
            return null;
        }

        double median = Median(henries),
            spread = 1.4826 * Median([.. henries.Select(one => Math.Abs(one - median))]);
        double error = Math.Max(spread, CauseTerm.HenryScatter) * Math.Sqrt(Math.PI / 2 / henries.Count);
        return Math.Abs(median) >= Math.Max(Least, 3 * error) ? median : null;
    }

    /// <summary>
    /// Whether ohms and henries moved as turns move both: the ohms by half as much, nearly. A spool that happens to lie there looks the
    /// same.
    /// </summary>
    /// <param name="ohm">ln of the ohms over those wanted.</param>
    /// <param name="henry">ln of the inductance over that wanted.</param>
    public static bool AsTurns(double ohm, double henry) =>
        Math.Sign(ohm) == Math.Sign(henry) && Math.Abs(henry / 2 - ohm) <= Math.Max(0.01, 0.2 * Math.Abs(ohm));

    internal static double Median(IReadOnlyCollection<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
