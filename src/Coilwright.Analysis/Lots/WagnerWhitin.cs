namespace Coilwright.Analysis.Lots;

/// <summary>Orders of least cost for known needs in periods, exact [WagnerWhitin].</summary>
/// <remarks>
/// Without a smallest lot an order covers whole periods and none comes while there is stock: f(t) = min over s ≤ t of f(s − 1) + K(s) +
/// Σ keeping of what is needed until t. A shelf life bounds t − s.
/// </remarks>
public static class WagnerWhitin
{
    /// <summary>Orders by period and their cost: ordering, and keeping what is left at the end of each period.</summary>
    /// <param name="demand">Needs and costs; <see cref="Demand.MinimumLot"/> is not looked at.</param>
    public static LotAnswer Answer(DynamicDemand demand)
    {
        int count = demand.Periods.Count;
        double[] least = new double[count + 1];
        int[] ordered = new int[count + 1];
        Array.Fill(least, double.PositiveInfinity, 1, count);
        for (int from = 0; from < count; from++)
        {
            Extend(demand, least, ordered, from);
        }

        double[] orders = new double[count];
        for (int end = count; end > 0; end = ordered[end])
        {
            orders[ordered[end]] = demand.Periods.Skip(ordered[end]).Take(end - ordered[end]).Sum();
        }

        return new LotAnswer(least[count], "Wagner and Whitin, exact; cost of the whole plan for ordering and keeping") { Orders = orders };
    }

    /// <summary>Tries an order in a period for every stretch that it may cover; a stretch that needs nothing costs no order.</summary>
    private static void Extend(DynamicDemand demand, double[] least, int[] ordered, int from)
    {
        (double cost, double keeping, double needed) = (least[from], 0, 0);
        for (int end = from + 1; end <= Math.Min(demand.Periods.Count, from + demand.LongestCover); end++)
        {
            double more = demand.Periods[end - 1];
            cost += more * keeping;
            needed += more;
            keeping += demand.Holding[end - 1];
            double whole = cost + (needed > 0 ? demand.OrderCost[from] : 0);
            if (whole < least[end])
            {
                (least[end], ordered[end]) = (whole, from);
            }
        }
    }
}
