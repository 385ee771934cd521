using Coilwright.Analysis.Lots;
using Coilwright.Formats.Lots;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Tests.Lots;

/// <summary>coilwright.demand/1.</summary>
public sealed class DemandReaderTests
{
    [Fact]
    public void Every_kind_is_read_whole()
    {
        Assert.Equal(
            new EconomicDemand(1300, 8)
            {
                HoldingPerYear = 0.225,
                StockoutPerYear = 5,
                MinimumLot = 3,
                ShelfLifeYears = 2,
            },
            Read(
                "\"kind\": \"economic\", \"demandPerYear\": 1300, \"orderCost\": 8, \"holdingPerYear\": 0.225, \"stockoutPerYear\": 5, "
                    + "\"minimumLot\": 3, \"shelfLifeYears\": 2"
            )
        );
        Assert.Equal(
            new ReorderDemand(1300, 150, 0.25, 8, 0.225, 7.5),
            Read(
                "\"kind\": \"reorder\", \"demandPerYear\": 1300, \"demandDeviationPerYear\": 150, \"leadTimeYears\": 0.25, "
                    + "\"orderCost\": 8, \"holdingPerYear\": 0.225, \"stockoutEach\": 7.5"
            )
        );
        DynamicDemand periods = Assert.IsType<DynamicDemand>(
            Read("\"kind\": \"dynamic\", \"periods\": [90, 120, 80], \"orderCost\": [5, 6, 7], \"holdingPerPeriod\": 2")
        );
        Assert.Equal([90, 120, 80], periods.Periods);
        Assert.Equal([5, 6, 7], periods.OrderCost);
        Assert.Equal([2, 2, 2], periods.Holding);
    }

    [Theory]
    [InlineData("\"all\": true", true)]
    [InlineData("\"all\": false", false)]
    [InlineData("\"at\": [0, 5]", true)]
    public void Prices_hold_for_all_units_unless_said(string more, bool allUnits)
    {
        string at = more.StartsWith("\"at\"", StringComparison.Ordinal) ? "" : "\"at\": [0, 5], ";
        EconomicDemand read = Assert.IsType<EconomicDemand>(
            Read(
                "\"kind\": \"economic\", \"demandPerYear\": 1, \"orderCost\": 1, \"holdingRate\": 0.2, "
                    + $"\"priceBreaks\": {{ {at}\"price\": [2, 1], {more} }}"
            )
        );
        Assert.Equal(allUnits, read.Prices!.AllUnits);
    }

    [Theory]
    [InlineData("[[20, 0.25], [10, 0.75]]")]
    [InlineData("{ \"10\": 0.75, \"20\": 0.25 }")]
    [InlineData("[[10, 20], [0.75, 0.25]]")]
    [InlineData("[[10, 15, 20], [0.75, 0, 0.25]]")]
    public void Amounts_with_probabilities_are_read_as_people_write_them(string discrete)
    {
        DiscreteNeed need = Assert.IsType<DiscreteNeed>(Once($"\"discrete\": {discrete}"));
        Assert.Equal([(10, 0.75), (20, 0.25)], need.Outcomes.Where(one => one.Probability > 0));
    }

    [Fact]
    public void Other_needs_are_read_by_their_numbers()
    {
        Assert.Equal(new NormalNeed(50, 8), Once("\"normal\": [50, 8]"));
        Assert.Equal(new LogNormalNeed(3, 0.5), Once("\"lognormal\": [3, 0.5]"));
        Assert.Equal(new PoissonNeed(6), Once("\"poisson\": 6"));
        Assert.Equal(new PoissonNeed(6), Once("\"poisson\": [6]"));
        Assert.Equal([(0, 0.25), (1, 0.75)], Assert.IsType<DiscreteNeed>(Once("\"discrete\": [0.25, 0.75]")).Outcomes);
    }

    [Theory]
    [InlineData("\"kind\": \"economical\"", "kind")]
    [InlineData("\"kind\": \"economic\", \"demandPerYear\": 0, \"orderCost\": -1, \"holdingPerYear\": 1", "demandPerYear orderCost")]
    [InlineData("\"kind\": \"economic\", \"demandPerYear\": 1, \"orderCost\": 1", "holdingPerYear")]
    [InlineData("\"kind\": \"economic\", \"demandPerYear\": 1, \"orderCost\": 1, \"holdingRate\": 0.2", "holdingRate")]
    [InlineData(
        "\"kind\": \"economic\", \"demandPerYear\": 9, \"orderCost\": 1, \"holdingPerYear\": 1, \"productionPerYear\": 9",
        "productionPerYear"
    )]
    [InlineData(
        "\"kind\": \"economic\", \"demandPerYear\": 9, \"orderCost\": 1, \"holdingPerYear\": 1, "
            + "\"priceBreaks\": { \"at\": [1, 5, 5], \"price\": [3, 4, 2], \"al\": true }",
        "priceBreaks.at[0] priceBreaks.at[2] priceBreaks.price[1] priceBreaks.al"
    )]
    [InlineData(
        "\"kind\": \"dynamic\", \"periods\": [1, -2, \"x\"], \"orderCost\": [1], \"holdingPerPeriod\": 1",
        "periods[1] periods[2] orderCost"
    )]
    [InlineData("\"kind\": \"dynamic\", \"periods\": [], \"orderCost\": 1", "periods holdingPerPeriod")]
    [InlineData("\"kind\": \"once\", \"overage\": 1, \"underage\": 1, \"distribution\": { \"normal\": [5, 0] }", "distribution.normal[1]")]
    [InlineData(
        "\"kind\": \"once\", \"overage\": 1, \"distribution\": { \"normal\": [5, 1], \"poisson\": 4 }",
        "distribution.normal underage"
    )]
    [InlineData(
        "\"kind\": \"once\", \"overage\": 1, \"underage\": 1, \"distribution\": { \"discrete\": [[1, 0.5], [2, 0.4]] }",
        "distribution.discrete"
    )]
    [InlineData(
        "\"kind\": \"once\", \"overage\": 1, \"underage\": 1, \"distribution\": { \"discrete\": [[1, 2], [3]] }",
        "distribution.discrete[0] distribution.discrete[1]"
    )]
    [InlineData(
        "\"kind\": \"reorder\", \"demandPerYear\": 9, \"stockoutEach\": 0, \"periods\": [1]",
        "stockoutEach periods demandDeviationPerYear leadTimeYears orderCost holdingPerYear"
    )]
    public void Every_problem_is_told_at_once_with_its_place(string fields, string places)
    {
        ReadOutcome<Demand> read = DemandReader.Read($"{{ \"format\": \"coilwright.demand/1\", {fields} }}");
        Assert.Equal(places.Split(' '), read.Problems.Select(problem => problem.Field));
        Assert.All(read.Problems, problem => Assert.True(problem.Message.Length > 10));
    }

    [Fact]
    public void More_periods_than_can_be_planned_with_a_smallest_lot_are_refused()
    {
        string periods = string.Join(", ", Enumerable.Repeat(1, 61));
        string text =
            $"{{ \"format\": \"coilwright.demand/1\", \"kind\": \"dynamic\", \"periods\": [{periods}], "
            + "\"orderCost\": 1, \"holdingPerPeriod\": 1";
        Assert.True(DemandReader.Read(text + " }").Ok);
        Assert.Equal("1 to 60", Assert.Single(DemandReader.Read(text + ", \"minimumLot\": 5 }").Problems).Allowed);
    }

    private static NeedDistribution Once(string need) =>
        Assert.IsType<OneTimeDemand>(Read($"\"kind\": \"once\", \"overage\": 1, \"underage\": 2, \"distribution\": {{ {need} }}")).Need;

    private static Demand Read(string fields)
    {
        ReadOutcome<Demand> read = DemandReader.Read($"{{ \"format\": \"coilwright.demand/1\", {fields} }}");
        Assert.Empty(read.Problems);
        return read.Value!;
    }
}
