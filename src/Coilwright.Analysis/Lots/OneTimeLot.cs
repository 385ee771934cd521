namespace Coilwright.Analysis.Lots;

/// <summary>How much to buy once for a need that is uncertain: the critical ratio [LotTheory].</summary>
/// <remarks>
/// Least expected cost o·E[(s − X)⁺] + u·E[(X − s)⁺] where P(X ≤ s) reaches u/(o + u). The cost is convex, so a smallest lot beyond it
/// is bought as it is or not at all.
/// </remarks>
public static class OneTimeLot
{
    /// <summary>The amount, its expected cost, and the probability that it serves the need.</summary>
    /// <param name="demand">Need and costs.</param>
    public static LotAnswer Answer(OneTimeDemand demand)
    {
        double ratio = demand.Underage / (demand.Overage + demand.Underage),
            free = Math.Max(0, demand.Need.Quantile(ratio)),
            least = demand.Need.IsWhole ? Math.Ceiling(demand.MinimumLot) : demand.MinimumLot,
            lot = Math.Max(free, least);
        lot = Cost(demand, lot) <= Cost(demand, 0) ? lot : 0;
        return new LotAnswer(Cost(demand, lot), "critical ratio of one purchase; expected cost of too many and too few")
        {
            Lot = lot,
            ServiceLevel = demand.Need.Served(lot),
            Notes = [.. Notes(demand, free, lot)],
        };
    }

    /// <summary>Expected cost of an amount.</summary>
    /// <param name="demand">Need and costs.</param>
    /// <param name="lot">Units bought.</param>
    public static double Cost(OneTimeDemand demand, double lot)
    {
        double tooFew = demand.Need.Short(lot);
        return demand.Overage * (lot - demand.Need.Mean + tooFew) + demand.Underage * tooFew;
    }

    private static IEnumerable<string> Notes(OneTimeDemand demand, double free, double lot)
    {
        if (lot > free)
        {
            yield return FormattableString.Invariant($"The smallest lot is more than the {free:0.##} that would be best");
        }

        if (lot < free)
        {
            yield return FormattableString.Invariant($"Buying nothing costs less than the smallest lot of {demand.MinimumLot:0.###}");
        }

        if (demand.ShelfLifeYears is not null)
        {
            yield return "A shelf life plays no part in a single purchase: what is left costs its overage";
        }
    }
}
