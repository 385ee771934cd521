namespace Coilwright.Analysis.Diagnosis;

/// <summary>What is off for all coils of a batch alike, so that no single coil is to blame.</summary>
public static class WholeBatch
{
    /// <summary>Fewer coils do not tell a batch from a fault. Our assumption.</summary>
    private const int Fewest = 5;

    /// <summary>Less than this is not worth telling, in logarithms. Our assumption.</summary>
    private const double Least = 0.02;

    /// <summary>
    /// The median of ln L over wanted, where the whole batch is off and its ohms did not move with it (turns would move both); null
    /// otherwise.
    /// </summary>
    /// <param name="ohms">ln of each resistance over the wanted one.</param>
    /// <param name="henries">ln of each inductance over the wanted one.</param>
    public static double? InductanceOff(IReadOnlyCollection<double> ohms, IReadOnlyCollection<double> henries)
    {
        if (henries.Count < Fewest)
        {
            return null;
        }

        double median = Median(henries),
            spread = 1.4826 * Median([.. henries.Select(one => Math.Abs(one - median))]);
        double error = Math.Max(spread, CauseTable.HenryScatter) * Math.Sqrt(Math.PI / 2 / henries.Count);
        bool told = Math.Abs(median) >= Math.Max(Least, 3 * error);
        double ohm = ohms.Count == 0 ? 0 : Median(ohms);
        return told && !MoveTogether(ohm, median) ? median : null;
    }

    /// <summary>Turns too many or too few, or shorted, move ohms and henries the same way: the ohms by half as much, nearly.</summary>
    internal static bool MoveTogether(double ohm, double henry) =>
        Math.Sign(ohm) == Math.Sign(henry) && Math.Abs(ohm) >= Math.Max(0.01, Math.Abs(henry) / 4);

    private static double Median(IReadOnlyCollection<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
