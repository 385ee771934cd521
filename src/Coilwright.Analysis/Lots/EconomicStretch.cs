namespace Coilwright.Analysis.Lots;

/// <summary>Cost of lots between two price breaks.</summary>
internal sealed class EconomicStretch
{
    private readonly EconomicDemand _demand;
    private readonly double _price;
    private readonly double _extra;
    private readonly double _keep;
    private readonly double _keepRate;

    public EconomicStretch(EconomicDemand demand, int at)
    {
        _demand = demand;
        _price = demand.Prices?.Price[at] ?? 0;
        _extra = demand.Prices?.Extra(at) ?? 0;
        _keepRate = demand.HoldingPerYear is null ? demand.HoldingRate ?? 0 : 0;
        _keep = demand.HoldingPerYear ?? _keepRate * _price;
    }

    /// <summary>The lot of least cost, were the price the same for every size.</summary>
    public double Lot => Math.Sqrt(2 * (_demand.OrderCost + _extra) * _demand.PerYear / Keep);

    /// <summary>Part of the use that waits.</summary>
    public double BackorderShare => _demand.StockoutPerYear is { } stockout ? _keep / (_keep + stockout) : 0;

    /// <summary>Keeping as it acts on half a lot: less when a lot comes slowly, and when customers wait for part of it.</summary>
    private double Keep => _keep * Filling * (1 - BackorderShare);

    private double Filling => _demand.ProductionPerYear is { } made ? 1 - _demand.PerYear / made : 1;

    /// <summary>Cost a year of a lot.</summary>
    public double Cost(double lot) =>
        _demand.PerYear * (_price + (_demand.OrderCost + _extra) / lot) + Keep * lot / 2 + _keepRate * _extra * Filling / 2;

    /// <summary>Cost a year of a lot of which only part is used before it spoils.</summary>
    public double CostOfSpoilt(double lot, double used, double years) =>
        (_demand.OrderCost + _extra + _price * lot) / years + (_keep + _keepRate * _extra / lot) * (lot - used / 2);
}
