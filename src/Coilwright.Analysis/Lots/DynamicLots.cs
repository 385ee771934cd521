using System.Globalization;

namespace Coilwright.Analysis.Lots;

/// <summary>Orders for known needs that differ from period to period.</summary>
public static class DynamicLots
{
    /// <summary>Orders by period and their cost.</summary>
    /// <param name="demand">Needs and costs; with a smallest lot at most <see cref="MinimumLotPlan.MostPeriods"/> periods.</param>
    /// <exception cref="ArgumentException">A smallest lot is given for more periods than that.</exception>
    public static LotAnswer Answer(DynamicDemand demand)
    {
        LotAnswer answer = demand.MinimumLot > 0 ? MinimumLotPlan.Answer(demand) : WagnerWhitin.Answer(demand);
        return answer with { Notes = [.. Notes(demand, answer.Orders!)] };
    }

    private static IEnumerable<string> Notes(DynamicDemand demand, IReadOnlyList<double> orders)
    {
        double left = orders.Sum() - demand.Periods.Sum();
        if (demand.MinimumLot > 0 && left > 1e-9)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"The smallest lot leaves {left:0.###} behind the last period");
        }

        if (demand.ShelfLifeYears is not { } years)
        {
            yield break;
        }

        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"A shelf life of {years:0.###} years is {demand.LongestCover} of the periods, {demand.PeriodsPerYear:0.###} in a year"
        );
        if (years * demand.PeriodsPerYear < 1)
        {
            yield return "The shelf life is shorter than one period: even an order for one period spoils before its end";
        }

        foreach (string late in Spoilt(demand, orders))
        {
            yield return late;
        }

        if (
            demand.MinimumLot <= 0
            && WagnerWhitin.Answer(demand with { ShelfLifeYears = null }).Orders is { } free
            && !free.SequenceEqual(orders)
        )
        {
            yield return "Lots that would outlast the shelf life are cut";
        }
    }

    /// <summary>Orders whose last unit, first in first out, is used later than it keeps.</summary>
    private static IEnumerable<string> Spoilt(DynamicDemand demand, IReadOnlyList<double> orders)
    {
        double bought = 0;
        for (int period = 0; period < orders.Count; period++)
        {
            bought += orders[period];
            double freshUntil = demand.Periods.Take(period + demand.LongestCover).Sum();
            if (orders[period] > 0 && bought > freshUntil + 1e-9)
            {
                double expires = Math.Min(orders[period], bought - freshUntil);
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"The order of period {period + 1} outlasts its shelf life: {expires:0.###} of it expires unless it is used elsewhere"
                );
            }
        }
    }
}
