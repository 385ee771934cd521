namespace Coilwright.Analysis.Lots;

/// <summary>A need that takes one of a few amounts.</summary>
/// <param name="Outcomes">Amounts, rising, with their probabilities, which make one.</param>
public sealed record DiscreteNeed(IReadOnlyList<(double Amount, double Probability)> Outcomes) : NeedDistribution
{
    /// <inheritdoc/>
    public override double Mean => Outcomes.Sum(one => one.Amount * one.Probability);

    /// <inheritdoc/>
    public override double Quantile(double probability)
    {
        double served = 0;
        foreach ((double amount, double part) in Outcomes)
        {
            served += part;
            if (served >= probability - 1e-12)
            {
                return amount;
            }
        }

        return Outcomes[^1].Amount;
    }

    /// <inheritdoc/>
    public override double Served(double amount) => Outcomes.Where(one => one.Amount <= amount).Sum(one => one.Probability);

    /// <inheritdoc/>
    public override double Short(double amount) => Outcomes.Sum(one => Math.Max(0, one.Amount - amount) * one.Probability);
}
