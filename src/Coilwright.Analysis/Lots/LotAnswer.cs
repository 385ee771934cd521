namespace Coilwright.Analysis.Lots;

/// <summary>What to order: the figures that the kind of question has.</summary>
/// <param name="Cost">Money: a year for steady use, of the whole plan for periods, expected for one purchase.</param>
/// <param name="Method">How it was found and what <paramref name="Cost"/> holds, in one sentence.</param>
public sealed record LotAnswer(double Cost, string Method)
{
    /// <summary>Units to order at the start of each period.</summary>
    public IReadOnlyList<double>? Orders { get; init; }

    /// <summary>Units in a lot.</summary>
    public double? Lot { get; init; }

    /// <summary>Stock, with what is on order and less what is owed, at which to order.</summary>
    public double? ReorderAt { get; init; }

    /// <summary>How long a lot lasts at the mean use, years.</summary>
    public double? CoverYears { get; init; }

    /// <summary>Part of the use that waits for the next lot, where that is planned.</summary>
    public double? BackorderShare { get; init; }

    /// <summary>Price of a unit in the break that the lot reaches.</summary>
    public double? Price { get; init; }

    /// <summary>Units of a lot that pass their shelf life unused.</summary>
    public double? Expires { get; init; }

    /// <summary>Probability that nothing is short: of one purchase, or until an order comes.</summary>
    public double? ServiceLevel { get; init; }

    /// <summary>Part of the use that is served from stock.</summary>
    public double? FillRate { get; init; }

    /// <summary>Reorder point less the mean use while an order is under way, units.</summary>
    public double? SafetyStock { get; init; }

    /// <summary>The answer if each unit short cost its money once, however long it is owed.</summary>
    public ReorderPoint? ShortOnce { get; init; }

    /// <summary>What a person must know beside the figures.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}
