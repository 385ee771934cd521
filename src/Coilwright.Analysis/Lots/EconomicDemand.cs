namespace Coilwright.Analysis.Lots;

/// <summary>Steady use that is known: one lot size for ever.</summary>
/// <param name="PerYear">Units used a year, above zero.</param>
/// <param name="OrderCost">Money for each order, whatever its size, above zero.</param>
public sealed record EconomicDemand(double PerYear, double OrderCost) : Demand
{
    /// <summary>Money for keeping one unit for a year; null when <see cref="HoldingRate"/> says it.</summary>
    public double? HoldingPerYear { get; init; }

    /// <summary>Cost of keeping for a year as a part of what the goods cost; null when <see cref="HoldingPerYear"/> says it.</summary>
    public double? HoldingRate { get; init; }

    /// <summary>What a unit costs by the size of the lot; null when the price plays no part.</summary>
    public PriceBreaks? Prices { get; init; }

    /// <summary>Units made a year while a lot is being made, above <see cref="PerYear"/>; null when a lot comes at once.</summary>
    public double? ProductionPerYear { get; init; }

    /// <summary>Money for one unit owed to customers for a year, when lacking it for a while is planned; null when it is not.</summary>
    public double? StockoutPerYear { get; init; }
}
