namespace Coilwright.Analysis.Lots;

/// <summary>Use that scatters about a mean, watched all the time: an order goes out when the stock falls to a point.</summary>
/// <param name="PerYear">Mean units used a year, above zero.</param>
/// <param name="DeviationPerYear">Standard deviation of a year's use; independent from day to day.</param>
/// <param name="LeadTimeYears">Time from the order to its arrival, years.</param>
/// <param name="OrderCost">Money for each order.</param>
/// <param name="HoldingPerYear">Money for keeping one unit for a year.</param>
/// <param name="StockoutEach">Money for each unit that is owed, for a year of owing it.</param>
public sealed record ReorderDemand(
    double PerYear,
    double DeviationPerYear,
    double LeadTimeYears,
    double OrderCost,
    double HoldingPerYear,
    double StockoutEach
) : Demand
{
    /// <summary>Use while an order is under way, normal.</summary>
    public LeadTimeUse Use => new(PerYear * LeadTimeYears, DeviationPerYear * Math.Sqrt(LeadTimeYears));
}
