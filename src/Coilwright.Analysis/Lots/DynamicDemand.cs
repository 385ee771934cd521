namespace Coilwright.Analysis.Lots;

/// <summary>Known needs that differ from period to period; an order comes at the start of its period.</summary>
/// <param name="Periods">Units needed in each period, zero or more.</param>
/// <param name="OrderCost">Money for an order in each period.</param>
/// <param name="Holding">Money for one unit that is left at the end of each period.</param>
public sealed record DynamicDemand(IReadOnlyList<double> Periods, IReadOnlyList<double> OrderCost, IReadOnlyList<double> Holding) : Demand
{
    /// <summary>Periods in a year, by which a shelf life becomes periods: twelve unless said.</summary>
    public double PeriodsPerYear { get; init; } = 12;

    /// <summary>Most periods that one order may cover for its last unit to be fresh; no limit without a shelf life, one at least.</summary>
    public int LongestCover =>
        ShelfLifeYears is { } years ? (int)Math.Clamp(Math.Floor(years * PeriodsPerYear + 1e-9), 1, Periods.Count) : Periods.Count;
}
