using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Lots;

/// <summary>Normal use while an order is under way, and what of it a stock leaves short.</summary>
/// <param name="Mean">Units.</param>
/// <param name="Deviation">Standard deviation, units; zero when the use is certain.</param>
public readonly record struct LeadTimeUse(double Mean, double Deviation)
{
    /// <summary>Probability that the use is no larger than a stock: the service level of a reorder point.</summary>
    /// <param name="stock">Units.</param>
    public double Served(double stock) => Deviation > 0 ? Normal.CDF(Mean, Deviation, stock) : Convert.ToDouble(stock >= Mean);

    /// <summary>Mean of what is short, E[(X − s)⁺] = σ·(φ(z) − z·Φ(−z)).</summary>
    /// <param name="stock">Units.</param>
    public double Short(double stock)
    {
        if (Deviation <= 0)
        {
            return Math.Max(0, Mean - stock);
        }

        double z = (stock - Mean) / Deviation;
        return Deviation * (Normal.PDF(0, 1, z) - z * Normal.CDF(0, 1, -z));
    }

    /// <summary>
    /// Half of the mean square of what is short, σ²/2·((z² + 1)·Φ(−z) − z·φ(z)): the integral of <see cref="Short"/> above.
    /// </summary>
    /// <param name="stock">Units.</param>
    public double ShortSquared(double stock)
    {
        if (Deviation <= 0)
        {
            return Math.Max(0, Mean - stock) * Math.Max(0, Mean - stock) / 2;
        }

        double z = (stock - Mean) / Deviation;
        return Deviation * Deviation / 2 * ((z * z + 1) * Normal.CDF(0, 1, -z) - z * Normal.PDF(0, 1, z));
    }

    /// <summary>The stock that is short by so much on the mean.</summary>
    /// <param name="missing">Units, above zero.</param>
    public double StockShortBy(double missing)
    {
        if (Deviation <= 0)
        {
            return Mean - missing;
        }

        // Short falls and exceeds mean − stock everywhere, by less than a deviation above these ends.
        (double low, double high) = (Mean - missing - Deviation, Mean + 40 * Deviation);
        for (int step = 0; step < 200; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = Short(middle) > missing ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
