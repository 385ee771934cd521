using Coilwright.Analysis.Lots;
using CsCheck;

namespace Coilwright.Analysis.Tests.Lots;

/// <summary>Every lot against all others that could have been bought.</summary>
public sealed class LotOptimalityTests
{
    private static readonly Gen<DynamicDemand> s_small =
        from count in Gen.Int[1, 6]
        from needs in Gen.Int[0, 9].Array[count]
        from orders in Gen.Int[0, 30].Array[count]
        from holding in Gen.Int[0, 4].Array[count]
        select new DynamicDemand(
            [.. needs.Select(Convert.ToDouble)],
            [.. orders.Select(Convert.ToDouble)],
            [.. holding.Select(Convert.ToDouble)]
        );

    private static readonly Gen<EconomicDemand> s_steady =
        from perYear in Gen.Double[1, 5000]
        from order in Gen.Double[1, 200]
        from holding in Gen.Double[0.05, 5]
        from kind in Gen.Int[0, 5]
        from minimum in Gen.Int[0, 400]
        from life in Gen.Double[0.05, 3]
        select new EconomicDemand(perYear, order)
        {
            HoldingPerYear = kind is 1 ? null : holding,
            HoldingRate = kind is 1 ? holding / 10 : null,
            Prices = kind is 1 or 2 ? new PriceBreaks([0, 100, 400], [10, 9, 7.5], kind == 1) : null,
            ProductionPerYear = kind is 3 or 4 ? 1.3 * perYear : null,
            StockoutPerYear = kind is 4 or 5 ? 2 * holding : null,
            MinimumLot = minimum,
            ShelfLifeYears = perYear * life > minimum ? life : null,
        };

    [Fact]
    public void Orders_by_period_cost_as_little_as_the_best_of_all_plans() =>
        s_small.ForAll(demand => Math.Abs(WagnerWhitin.Answer(demand).Cost - Best(demand)) < 1e-9, 200);

    [Fact]
    public void With_a_smallest_lot_too() =>
        s_small.ForAll(
            demand =>
            {
                DynamicDemand bound = demand with { MinimumLot = 5 };
                LotAnswer answer = DynamicLots.Answer(bound);
                Assert.Equal(Best(bound), answer.Cost, 1e-9);
                Assert.All(answer.Orders!, order => Assert.True(order is 0 or >= 5));
            },
            120
        );

    [Fact]
    public void Within_a_shelf_life_too() =>
        s_small.ForAll(demand => Math.Abs(WagnerWhitin.Answer(Short(demand)).Cost - Best(Short(demand))) < 1e-9, 200);

    [Fact]
    public void The_economic_lot_costs_no_more_than_any_other_that_is_allowed() =>
        s_steady.ForAll(
            demand =>
            {
                LotAnswer answer = EconomicLot.Answer(demand);
                double most = demand.PerYear * (demand.ShelfLifeYears ?? 20);
                Assert.InRange(answer.Lot!.Value, demand.MinimumLot, demand.ShelfLifeYears is null ? double.MaxValue : most * (1 + 1e-12));
                for (double lot = Math.Max(demand.MinimumLot, most / 500); lot <= most; lot += most / 500)
                {
                    Assert.True(answer.Cost <= EconomicLot.Cost(demand, lot) * (1 + 1e-12), $"{lot} is better than {answer.Lot}");
                }
            },
            200
        );

    [Fact]
    public void One_purchase_is_the_best_of_all_amounts()
    {
        NeedDistribution[] needs =
        [
            new PoissonNeed(3.7),
            new PoissonNeed(41),
            new DiscreteNeed([(0, 0.2), (4, 0.3), (9, 0.4), (20, 0.1)]),
            new NormalNeed(50, 8),
            new LogNormalNeed(3, 0.6),
        ];
        foreach (NeedDistribution need in needs)
        {
            foreach ((double overage, double underage) in ((double, double)[])[(1, 4), (3, 1), (0.2, 9)])
            {
                OneTimeDemand demand = new(overage, underage, need);
                double cost = OneTimeLot.Answer(demand).Cost;
                Assert.All(Enumerable.Range(0, 1500), step => Assert.True(cost <= OneTimeLot.Cost(demand, step * 0.1) + 1e-9));
            }
        }
    }

    [Fact]
    public void What_is_short_of_a_need_is_the_sum_over_its_outcomes()
    {
        // Σ (x − s)⁺·P(x), with P(x) from the differences of P(X ≤ x): a road past the closed forms.
        foreach (NeedDistribution need in (NeedDistribution[])[new PoissonNeed(6), new NormalNeed(30, 5), new LogNormalNeed(2, 0.5)])
        {
            double step = need.IsWhole ? 1 : 0.002,
                sum = 0;
            for (double at = 0; at < 200; at += step)
            {
                double middle = need.IsWhole ? at + 1 : at + step / 2;
                sum += Math.Max(0, middle - 9) * (need.Served(at + step) - need.Served(at));
            }

            Assert.Equal(sum, need.Short(9), 1e-5);
        }
    }

    [Fact]
    public void The_reorder_pair_lies_within_a_hundredth_of_a_percent_of_the_best_of_a_grid()
    {
        ReorderDemand demand = new(
            PerYear: 1300,
            DeviationPerYear: 150,
            LeadTimeYears: 1.0 / 12,
            OrderCost: 8,
            HoldingPerYear: 0.225,
            StockoutEach: 7.5
        );
        double best = (
            from at in Enumerable.Range(80, 120)
            from lot in Enumerable.Range(200, 300)
            select ReorderLot.Cost(demand, new ReorderPoint(at, lot))
        ).Min();
        Assert.InRange(ReorderLot.Answer(demand).Cost, best * 0.9999, best * 1.0001);
    }

    private static DynamicDemand Short(DynamicDemand demand) => demand with { ShelfLifeYears = 2, PeriodsPerYear = 1 };

    /// <summary>Every plan of whole units, period by period.</summary>
    private static double Best(DynamicDemand demand)
    {
        double total = demand.Periods.Sum() + demand.MinimumLot;
        Dictionary<(int, double), double> known = [];
        return From(0, 0);

        double From(int period, double stock)
        {
            if (period == demand.Periods.Count)
            {
                return 0;
            }

            if (known.TryGetValue((period, stock), out double best))
            {
                return best;
            }

            best = double.PositiveInfinity;
            double fresh = demand.Periods.Skip(period).Take(demand.LongestCover).Sum();
            double most = demand.ShelfLifeYears is null ? total : fresh - stock;
            for (double order = 0; order <= most; order++)
            {
                double left = stock + order - demand.Periods[period];
                if (left >= 0 && left <= total && (order == 0 || order >= demand.MinimumLot))
                {
                    best = Math.Min(
                        best,
                        (order > 0 ? demand.OrderCost[period] : 0) + left * demand.Holding[period] + From(period + 1, left)
                    );
                }
            }

            return known[(period, stock)] = best;
        }
    }
}
