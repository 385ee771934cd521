using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Lots;

/// <summary>A need of whole units that come independently of one another.</summary>
/// <param name="Expected">Mean, above zero.</param>
public sealed record PoissonNeed(double Expected) : NeedDistribution
{
    /// <inheritdoc/>
    public override double Mean => Expected;

    /// <inheritdoc/>
    public override bool IsWhole => true;

    /// <inheritdoc/>
    public override double Quantile(double probability)
    {
        double from = Math.Max(0, Math.Floor(Expected + Math.Sqrt(Expected) * Normal.InvCDF(0, 1, probability)));
        while (from > 0 && Served(from - 1) >= probability)
        {
            from--;
        }

        while (Served(from) < probability)
        {
            from++;
        }

        return from;
    }

    /// <inheritdoc/>
    public override double Served(double amount) => amount < 0 ? 0 : Poisson.CDF(Expected, amount);

    /// <summary>E[(X − s)⁺] = (λ − s)·P(X &gt; s) + λ·P(X = s) for whole s (derived).</summary>
    /// <param name="amount">Units at hand.</param>
    public override double Short(double amount)
    {
        double whole = Math.Floor(amount);
        if (whole < 0)
        {
            return Expected - amount;
        }

        double beyond = 1 - Served(whole);
        double atWhole = (Expected - whole) * beyond + Expected * Poisson.PMF(Expected, (int)whole);
        return Math.Max(0, atWhole - (amount - whole) * beyond);
    }
}
