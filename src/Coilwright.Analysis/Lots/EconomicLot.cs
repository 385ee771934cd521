namespace Coilwright.Analysis.Lots;

/// <summary>The lot of least cost a year for steady use [LotTheory].</summary>
/// <remarks>
/// Cost a year of a lot Q, by the terms below: D·(K + extra)/Q + h'·Q/2 + D·price + rate·extra/2, K each order, D the use a year. Keeping
/// costs h a unit and year; with production at P a year and planned lacking at b a unit and year, h' = h·(1 − D/P)·b/(h + b), and the part
/// h/(h + b) of the use waits. Incremental prices charge their extra (what the first units cost more) with each order. Convex between two
/// breaks, so the best lot of each stretch is its own square root or an end.
/// </remarks>
public static class EconomicLot
{
    /// <summary>The lot and its cost a year; the cost holds the purchase when prices are given.</summary>
    /// <param name="demand">Use and costs.</param>
    public static LotAnswer Answer(EconomicDemand demand)
    {
        double most = demand.ShelfLifeYears is { } years ? demand.PerYear * years : double.PositiveInfinity;
        if (most < demand.MinimumLot)
        {
            return Spoilt(demand);
        }

        (double free, _) = Best(demand, demand.MinimumLot, double.PositiveInfinity);
        (double lot, double cost) = Best(demand, demand.MinimumLot, most);
        List<string> notes = free > lot ? [LotNotes.Cut(free, lot, demand.ShelfLifeYears!.Value)] : [];
        if (lot <= demand.MinimumLot)
        {
            notes.Insert(0, LotNotes.Minimum(lot, demand.PerYear));
        }

        return Describe(demand, lot, cost) with
        {
            Notes = notes,
        };
    }

    /// <summary>Cost a year of a lot, at the prices that its size reaches.</summary>
    /// <param name="demand">Use and costs.</param>
    /// <param name="lot">Units in the lot, above zero.</param>
    public static double Cost(EconomicDemand demand, double lot) => new EconomicStretch(demand, demand.Prices?.Reached(lot) ?? 0).Cost(lot);

    private static (double Lot, double Cost) Best(EconomicDemand demand, double least, double most)
    {
        double[] starts = [.. demand.Prices?.At ?? [0]];
        IEnumerable<double> candidates = Enumerable
            .Range(0, starts.Length)
            .Select(at =>
            {
                double low = Math.Max(least, starts[at]),
                    high = Math.Min(most, at + 1 < starts.Length ? starts[at + 1] : double.PositiveInfinity);
                return low <= high ? Math.Clamp(new EconomicStretch(demand, at).Lot, low, high) : double.NaN;
            })
            .Where(lot => lot > 0);
        return candidates.Select(lot => (lot, Cost(demand, lot))).MinBy(one => one.Item2);
    }

    private static LotAnswer Describe(EconomicDemand demand, double lot, double cost) =>
        new(cost, Method(demand))
        {
            Lot = lot,
            CoverYears = lot / demand.PerYear,
            Price = demand.Prices?.Price[demand.Prices.Reached(lot)],
            BackorderShare = demand.StockoutPerYear is null
                ? null
                : new EconomicStretch(demand, demand.Prices?.Reached(lot) ?? 0).BackorderShare,
        };

    /// <summary>The smallest lot lies longer than it keeps: each is bought for one shelf life, and the rest thrown away.</summary>
    private static LotAnswer Spoilt(EconomicDemand demand)
    {
        (double lot, double years) = (demand.MinimumLot, demand.ShelfLifeYears!.Value);
        double used = demand.PerYear * years;
        EconomicStretch stretch = new(demand, demand.Prices?.Reached(lot) ?? 0);
        return Describe(demand, lot, stretch.CostOfSpoilt(lot, used, years)) with
        {
            BackorderShare = null,
            Expires = lot - used,
            Notes = [LotNotes.Minimum(lot, demand.PerYear), LotNotes.Expires(lot, lot - used, years)],
        };
    }

    private static string Method(EconomicDemand demand)
    {
        string[] with =
        [
            .. (demand.Prices, demand.Prices?.AllUnits) switch
            {
                (null, _) => (string[])[],
                (_, true) => ["prices for all units of a lot"],
                _ => ["prices for the units beyond each break"],
            },
            .. demand.ProductionPerYear is null ? (string[])[] : ["a lot that comes as it is made"],
            .. demand.StockoutPerYear is null ? (string[])[] : ["planned waiting"],
        ];
        string more = with.Length == 0 ? "" : $" with {string.Join(", ", with)}";
        string holds = demand.Prices is null ? "ordering and keeping" : "ordering, keeping and the goods";
        return $"economic order quantity{more}; cost a year for {holds}{(demand.StockoutPerYear is null ? "" : " and waiting")}";
    }
}
