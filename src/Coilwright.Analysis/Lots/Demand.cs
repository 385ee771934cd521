namespace Coilwright.Analysis.Lots;

/// <summary>
/// What is asked of buying: how much is used and what ordering, keeping and lacking it costs. Money in the shop's currency.
/// </summary>
public abstract record Demand
{
    /// <summary>Smallest lot that can be had, in units of use; zero when any can.</summary>
    public double MinimumLot { get; init; }

    /// <summary>How long a lot may lie before it is spoilt, years; null when it keeps.</summary>
    public double? ShelfLifeYears { get; init; }
}
