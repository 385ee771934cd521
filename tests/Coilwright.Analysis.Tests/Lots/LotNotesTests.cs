using Coilwright.Analysis.Lots;

namespace Coilwright.Analysis.Tests.Lots;

/// <summary>Smallest lots and shelf lives are told in years.</summary>
public sealed class LotNotesTests
{
    private static readonly EconomicDemand s_colour = new(PerYear: 0.25, OrderCost: 40) { HoldingPerYear = 2, MinimumLot = 30 };

    [Fact]
    public void A_lifetimes_supply_of_a_colour_is_told_as_such()
    {
        LotAnswer answer = EconomicLot.Answer(s_colour);
        Assert.Equal((30, 120), (answer.Lot, answer.CoverYears));
        Assert.Equal(["Minimum lot 30, use 0.25 a year: 120 years of cover"], answer.Notes);
    }

    [Fact]
    public void What_expires_of_it_is_told_and_paid_for()
    {
        LotAnswer answer = EconomicLot.Answer(
            s_colour with
            {
                ShelfLifeYears = 2,
                HoldingPerYear = null,
                HoldingRate = 0.1,
                Prices = PriceBreaks.Single(20),
            }
        );
        Assert.Equal((30, 120, 29.5), (answer.Lot, answer.CoverYears, answer.Expires));
        Assert.Equal((40 + 600) / 2.0 + 2 * (30 - 0.25), answer.Cost, 1e-9); // a lot every two years, of which half a unit is used
        Assert.Contains(answer.Notes, note => note.Contains("29.5 of each lot expires", StringComparison.Ordinal));
    }

    [Fact]
    public void A_lot_over_its_shelf_life_is_cut()
    {
        LotAnswer answer = EconomicLot.Answer(new EconomicDemand(1300, 8) { HoldingPerYear = 0.225, ShelfLifeYears = 0.1 });
        Assert.Equal(130, answer.Lot!.Value, 1e-9);
        Assert.Contains("is cut to 130", Assert.Single(answer.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void One_purchase_below_a_smallest_lot_is_bought_whole_or_not_at_all()
    {
        OneTimeDemand demand = new(1, 4, new PoissonNeed(6));
        Assert.Equal(9, OneTimeLot.Answer(demand with { MinimumLot = 8.5 }).Lot);
        Assert.Equal(0, OneTimeLot.Answer(demand with { MinimumLot = 60 }).Lot);
    }

    [Fact]
    public void A_reorder_lot_is_raised_to_the_smallest_and_its_point_falls_with_it()
    {
        ReorderDemand demand = new(
            PerYear: 1300,
            DeviationPerYear: 150,
            LeadTimeYears: 0.1,
            OrderCost: 8,
            HoldingPerYear: 0.225,
            StockoutEach: 7.5
        );
        (LotAnswer free, LotAnswer bound) = (ReorderLot.Answer(demand), ReorderLot.Answer(demand with { MinimumLot = 600 }));
        Assert.Equal(600, bound.Lot);
        Assert.True(bound.ReorderAt < free.ReorderAt && bound.Cost > free.Cost);
        double best = Enumerable.Range(50, 200).Min(at => ReorderLot.Cost(demand, new ReorderPoint(at, 600)));
        Assert.InRange(bound.Cost, 0.999 * best, best);
    }

    [Fact]
    public void An_order_that_spoils_before_it_is_used_is_named()
    {
        LotAnswer answer = DynamicLots.Answer(
            new DynamicDemand([2, 2, 2, 2], [9, 9, 9, 9], [1, 1, 1, 1]) { MinimumLot = 8, ShelfLifeYears = 1.0 / 6 }
        );
        Assert.Contains(answer.Notes, note =>
            note.StartsWith("The order of period 1 outlasts its shelf life: 4", StringComparison.Ordinal)
        );
    }
}
