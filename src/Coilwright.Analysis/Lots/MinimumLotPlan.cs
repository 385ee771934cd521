namespace Coilwright.Analysis.Lots;

/// <summary>Orders of least cost for known needs in periods when no order may be smaller than a lot, exact.</summary>
/// <remarks>
/// Costs are concave, so between two ends of a period without stock at most one order is larger than the smallest lot (an extreme point of
/// the flow, derived): each order is nothing, the smallest lot, or what brings the stock to zero at a later period after so many smallest
/// lots. What is left behind the last period has been bought all the same, and is kept through it.
/// </remarks>
public sealed class MinimumLotPlan
{
    /// <summary>Most periods: the work grows with their fourth power.</summary>
    public const int MostPeriods = 60;

    private readonly DynamicDemand _demand;
    private readonly double[] _until;
    private readonly Dictionary<(int Period, long Stock, bool LargerTaken), (double Cost, double Order)> _known = [];

    private MinimumLotPlan(DynamicDemand demand)
    {
        _demand = demand;
        _until = new double[demand.Periods.Count + 1];
        for (int period = 0; period < demand.Periods.Count; period++)
        {
            _until[period + 1] = _until[period] + demand.Periods[period];
        }
    }

    /// <summary>Orders by period and their cost.</summary>
    /// <param name="demand">Needs, costs and the smallest lot; the shelf life is not looked at.</param>
    /// <exception cref="ArgumentException">There are more than <see cref="MostPeriods"/> periods, or no smallest lot.</exception>
    public static LotAnswer Answer(DynamicDemand demand)
    {
        if (demand.Periods.Count > MostPeriods || demand.MinimumLot <= 0)
        {
            throw new ArgumentException("A smallest lot and few enough periods are needed.", nameof(demand));
        }

        MinimumLotPlan plan = new(demand);
        double cost = plan.Least(0, 0, largerTaken: false).Cost;
        return new LotAnswer(cost, "least cost with a smallest lot, exact; cost of the whole plan for ordering and keeping")
        {
            Orders = plan.Orders(),
        };
    }

    private double[] Orders()
    {
        double[] orders = new double[_demand.Periods.Count];
        (double stock, bool taken) = (0, false);
        for (int period = 0; period < orders.Length; period++)
        {
            orders[period] = Least(period, stock, taken).Order;
            (stock, taken) = After(period, stock, taken, orders[period]);
        }

        return orders;
    }

    private (double Cost, double Order) Least(int period, double stock, bool largerTaken)
    {
        if (period == _demand.Periods.Count)
        {
            return (0, 0);
        }

        // Two ways to one stock may differ in the last bits: a millionth is one stock.
        (int, long, bool) key = (period, (long)Math.Round(stock * 1e6), largerTaken);
        if (!_known.TryGetValue(key, out (double Cost, double Order) best))
        {
            best = Choices(period, stock, largerTaken)
                .Where(order => stock + order >= _demand.Periods[period] - 1e-9)
                .Select(order => (Cost(period, stock, largerTaken, order), order))
                .Append((double.PositiveInfinity, 0))
                .MinBy(one => one.Item1);
            _known[key] = best;
        }

        return best;
    }

    private double Cost(int period, double stock, bool largerTaken, double order)
    {
        (double left, bool taken) = After(period, stock, largerTaken, order);
        return (order > 0 ? _demand.OrderCost[period] : 0) + left * _demand.Holding[period] + Least(period + 1, left, taken).Cost;
    }

    private (double Stock, bool LargerTaken) After(int period, double stock, bool largerTaken, double order)
    {
        double left = Math.Max(0, stock + order - _demand.Periods[period]);
        return left < 1e-9 ? (0, false) : (left, largerTaken || order > _demand.MinimumLot);
    }

    private IEnumerable<double> Choices(int period, double stock, bool largerTaken)
    {
        yield return 0;
        yield return _demand.MinimumLot;
        if (largerTaken)
        {
            yield break;
        }

        for (int end = period + 1; end < _until.Length; end++)
        {
            double whole = _until[end] - _until[period] - stock;
            for (double order = whole; order > _demand.MinimumLot; order -= _demand.MinimumLot)
            {
                yield return order;
            }
        }
    }
}
