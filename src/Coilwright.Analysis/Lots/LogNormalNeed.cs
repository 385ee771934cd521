using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Lots;

/// <summary>A need whose logarithm scatters normally.</summary>
/// <param name="LogMean">Mean of the natural logarithm.</param>
/// <param name="LogDeviation">Standard deviation of the natural logarithm, above zero.</param>
public sealed record LogNormalNeed(double LogMean, double LogDeviation) : NeedDistribution
{
    /// <inheritdoc/>
    public override double Mean => Math.Exp(LogMean + LogDeviation * LogDeviation / 2);

    /// <inheritdoc/>
    public override double Quantile(double probability) => Math.Exp(Normal.InvCDF(LogMean, LogDeviation, probability));

    /// <inheritdoc/>
    public override double Served(double amount) => amount > 0 ? Normal.CDF(LogMean, LogDeviation, Math.Log(amount)) : 0;

    /// <summary>E[(X − s)⁺] = E[X]·Φ(σ − z) − s·Φ(−z), z = (ln s − µ)/σ (derived).</summary>
    /// <param name="amount">Units at hand.</param>
    public override double Short(double amount)
    {
        if (amount <= 0)
        {
            return Mean - amount;
        }

        double z = (Math.Log(amount) - LogMean) / LogDeviation;
        return Mean * Normal.CDF(0, 1, LogDeviation - z) - amount * Normal.CDF(0, 1, -z);
    }
}
