namespace Coilwright.Analysis.Lots;

/// <summary>How an uncertain need may come out.</summary>
public abstract record NeedDistribution
{
    /// <summary>Mean need.</summary>
    public abstract double Mean { get; }

    /// <summary>The least amount that serves the whole need with a probability of at least so much.</summary>
    /// <param name="probability">Above zero and below one.</param>
    public abstract double Quantile(double probability);

    /// <summary>Probability that the need is no larger than an amount.</summary>
    /// <param name="amount">Units.</param>
    public abstract double Served(double amount);

    /// <summary>Mean of what is short of the need.</summary>
    /// <param name="amount">Units at hand.</param>
    public abstract double Short(double amount);

    /// <summary>True when the need comes in whole units.</summary>
    public virtual bool IsWhole => false;
}
