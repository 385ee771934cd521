namespace Coilwright.Analysis.Lots;

/// <summary>When to order and how much, when the use until the order comes is uncertain [LotTheory].</summary>
/// <remarks>
/// D the use a year, K an order, h keeping and b owing one unit for a year, n(r) the mean short of the use X while an order is under way,
/// n₂(r) half of its mean square. Exact cost a year of (r, Q), normal use: (K·D + h·((r − E X)·Q + Q²/2) + (h + b)·(n₂(r) − n₂(r + Q)))/Q.
/// Without n₂(r + Q), which is nothing unless a lot is no larger than the scatter: n(r) = h·Q/(h + b) and
/// Q² = 2·(K·D + (h + b)·n₂(r))/h, in turn from the economic lot until both stand.
/// </remarks>
public static class ReorderLot
{
    private const int MostRounds = 500;

    /// <summary>The point, the lot and their exact cost a year.</summary>
    /// <param name="demand">Use and costs.</param>
    public static LotAnswer Answer(ReorderDemand demand)
    {
        double most = demand.ShelfLifeYears is { } years ? demand.PerYear * years : double.PositiveInfinity;
        ReorderPoint free = Joint(demand);
        double lot = Math.Max(demand.MinimumLot, Math.Min(most, free.Lot));
        ReorderPoint chosen = Math.Abs(lot - free.Lot) > 0 ? new ReorderPoint(PointFor(demand, lot), lot) : free;
        LeadTimeUse use = demand.Use;
        return new LotAnswer(
            Cost(demand, chosen),
            "reorder point and lot in turn by the loss function until both stand; exact cost a year for ordering, keeping and owing, "
                + "each unit owed charged by the year"
        )
        {
            Lot = chosen.Lot,
            ReorderAt = chosen.At,
            CoverYears = chosen.Lot / demand.PerYear,
            SafetyStock = chosen.At - use.Mean,
            ServiceLevel = use.Served(chosen.At),
            FillRate = 1 - (use.Short(chosen.At) - use.Short(chosen.At + chosen.Lot)) / chosen.Lot,
            ShortOnce = ChargedOnce(demand),
            Expires = lot > most ? lot - most : null,
            Notes = [.. Notes(demand, free.Lot, lot, most)],
        };
    }

    /// <summary>Exact cost a year: ordering, keeping and owing.</summary>
    /// <param name="demand">Use and costs.</param>
    /// <param name="point">When to order and how much.</param>
    public static double Cost(ReorderDemand demand, ReorderPoint point)
    {
        (LeadTimeUse use, double lot, double keep) = (demand.Use, point.Lot, demand.HoldingPerYear);
        double kept = keep * ((point.At - use.Mean) * lot + lot * lot / 2);
        double owed = (keep + demand.StockoutEach) * (use.ShortSquared(point.At) - use.ShortSquared(point.At + lot));
        return (demand.OrderCost * demand.PerYear + kept + owed) / lot;
    }

    /// <summary>The economic lot, with a safety stock for the service level b/(h + b): where the search begins.</summary>
    /// <param name="demand">Use and costs.</param>
    public static ReorderPoint Start(ReorderDemand demand) =>
        new(
            new NormalNeed(demand.Use.Mean, demand.Use.Deviation).Quantile(
                demand.StockoutEach / (demand.HoldingPerYear + demand.StockoutEach)
            ),
            Math.Sqrt(2 * demand.OrderCost * demand.PerYear / demand.HoldingPerYear)
        );

    /// <summary>
    /// The pair if each unit short costs its money once: F(r) = 1 − Q·h/(b·D), Q² = 2·D·(K + b·n(r))/h, in turn; null where a unit short
    /// costs so little that it has no answer.
    /// </summary>
    /// <param name="demand">Use and costs.</param>
    public static ReorderPoint? ChargedOnce(ReorderDemand demand)
    {
        (LeadTimeUse use, ReorderPoint now) = (demand.Use, Start(demand));
        for (int round = 0; round < MostRounds; round++)
        {
            double shortShare = now.Lot * demand.HoldingPerYear / (demand.StockoutEach * demand.PerYear);
            if (shortShare >= 1)
            {
                return null;
            }

            double at = new NormalNeed(use.Mean, use.Deviation).Quantile(1 - shortShare);
            double lot = Math.Sqrt(2 * demand.PerYear * (demand.OrderCost + demand.StockoutEach * use.Short(at)) / demand.HoldingPerYear);
            if (Math.Abs(lot - now.Lot) < 1e-10 * lot)
            {
                return new ReorderPoint(at, lot);
            }

            now = new ReorderPoint(at, lot);
        }

        return null;
    }

    /// <summary>Reorder point and lot in turn: the lot grows from the economic one towards a bound, so it comes to rest.</summary>
    private static ReorderPoint Joint(ReorderDemand demand)
    {
        double lot = Start(demand).Lot;
        for (int round = 0; round < MostRounds; round++)
        {
            double more = demand.StockoutEach + demand.HoldingPerYear,
                squared = demand.OrderCost * demand.PerYear + more * demand.Use.ShortSquared(PointFor(demand, lot)),
                next = Math.Sqrt(2 * squared / demand.HoldingPerYear);
            bool stands = Math.Abs(next - lot) < 1e-12 * lot;
            lot = next;
            if (stands)
            {
                break;
            }
        }

        return new ReorderPoint(PointFor(demand, lot), lot);
    }

    private static double PointFor(ReorderDemand demand, double lot) =>
        demand.Use.StockShortBy(demand.HoldingPerYear * lot / (demand.HoldingPerYear + demand.StockoutEach));

    private static IEnumerable<string> Notes(ReorderDemand demand, double free, double lot, double most)
    {
        if (lot > free)
        {
            yield return LotNotes.Minimum(lot, demand.PerYear);
        }

        if (lot < free)
        {
            yield return LotNotes.Cut(free, lot, demand.ShelfLifeYears!.Value);
        }

        if (lot > most)
        {
            yield return LotNotes.Expires(lot, lot - most, demand.ShelfLifeYears!.Value);
        }
    }
}
