using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Lots;

/// <summary>A need that scatters normally.</summary>
/// <param name="Middle">Mean.</param>
/// <param name="Deviation">Standard deviation, above zero.</param>
public sealed record NormalNeed(double Middle, double Deviation) : NeedDistribution
{
    /// <inheritdoc/>
    public override double Mean => Middle;

    /// <inheritdoc/>
    public override double Quantile(double probability) => Normal.InvCDF(Middle, Deviation, probability);

    /// <inheritdoc/>
    public override double Served(double amount) => Normal.CDF(Middle, Deviation, amount);

    /// <inheritdoc/>
    public override double Short(double amount) => new LeadTimeUse(Middle, Deviation).Short(amount);
}
