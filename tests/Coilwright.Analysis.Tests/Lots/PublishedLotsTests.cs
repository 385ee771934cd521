using System.Text.Json;
using Coilwright.Analysis.Lots;

namespace Coilwright.Analysis.Tests.Lots;

/// <summary>Published examples: tests/Reference/lots/published.json, which names their sources.</summary>
public sealed class PublishedLotsTests
{
    private static readonly JsonElement s_all = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "lots", "published.json")))
        .RootElement;

    [Fact]
    public void Economic_lots_are_the_published_ones()
    {
        Evidence check = Evidence.Outside(
            "Economic lots: four published examples (plain, planned waiting, finite production, incremental prices)",
            "L. V. Snyder, Z.-J. M. Shen, examples of chapter 3 [LotTheory]",
            "read",
            "rounding of the last printed digit"
        );
        foreach (JsonElement one in s_all.GetProperty("economic").EnumerateArray())
        {
            LotAnswer answer = EconomicLot.Answer(Economic(one));
            check.WithinPart(answer.Lot!.Value, Number(one, "lot"), 1e-10).WithinPart(answer.Cost, Number(one, "cost"), 1e-10);
            if (one.TryGetProperty("waits", out JsonElement waits))
            {
                check.Within(answer.BackorderShare!.Value, waits.GetDouble(), 1e-10);
            }
        }

        check.Record();
        JsonElement recalled = s_all.GetProperty("memory").GetProperty("economic");
        Evidence
            .Outside("Economic lot with keeping as a part of the price", "S. Chopra, P. Meindl [LotTheory]", "memory", "rounding")
            .Within(EconomicLot.Answer(Economic(recalled)).Lot!.Value, Number(recalled, "lot"), 0.5)
            .Record();
    }

    [Fact]
    public void One_purchase_is_the_published_one()
    {
        Evidence check = Evidence.Outside(
            "One purchase for an uncertain need: four published examples",
            "L. V. Snyder, Z.-J. M. Shen, examples of chapter 4 [LotTheory]",
            "read",
            "rounding of the last printed digit"
        );
        foreach (JsonElement one in s_all.GetProperty("once").EnumerateArray())
        {
            LotAnswer answer = OneTimeLot.Answer(new OneTimeDemand(Number(one, "overage"), Number(one, "underage"), Need(one)));
            check.WithinPart(answer.Lot!.Value, Number(one, "lot"), 1e-9).WithinPart(answer.Cost, Number(one, "cost"), 1e-9);
        }

        JsonElement profit = s_all.GetProperty("profit");
        (double revenue, double purchase) = (Number(profit, "revenue"), Number(profit, "purchase"));
        LotAnswer sold = OneTimeLot.Answer(new OneTimeDemand(purchase - Number(profit, "salvage"), revenue - purchase, Need(profit)));
        check
            .WithinPart(sold.Lot!.Value, Number(profit, "lot"), 1e-9)
            .WithinPart((revenue - purchase) * Need(profit).Mean - sold.Cost, Number(profit, "profit"), 1e-9)
            .Record();
    }

    [Fact]
    public void The_reorder_point_and_lot_are_the_published_ones()
    {
        JsonElement one = s_all.GetProperty("reorder");
        ReorderDemand demand = new(
            PerYear: Number(one, "perYear"),
            DeviationPerYear: Number(one, "deviation"),
            LeadTimeYears: Number(one, "leadTime"),
            OrderCost: Number(one, "order"),
            HoldingPerYear: Number(one, "holding"),
            StockoutEach: Number(one, "stockout")
        );
        (double[] at, double[] start, double[] joint) = (Numbers(one, "costAt"), Numbers(one, "start"), Numbers(one, "joint"));
        LotAnswer answer = ReorderLot.Answer(demand);
        Evidence
            .Outside(
                "Reorder point and lot: exact cost, economic lot with safety stock, both in turn",
                "L. V. Snyder, Z.-J. M. Shen, examples 5.1, 5.5 and 5.6 [LotTheory]",
                "read",
                "rounding of what the source's own iteration left"
            )
            .WithinPart(ReorderLot.Cost(demand, new ReorderPoint(at[0], at[1])), Number(one, "cost"), 1e-9)
            .WithinPart(ReorderLot.Start(demand).At, start[0], 1e-9)
            .WithinPart(ReorderLot.Start(demand).Lot, start[1], 1e-9)
            .WithinPart(answer.ReorderAt!.Value, joint[0], 1e-8)
            .WithinPart(answer.Lot!.Value, joint[1], 1e-8)
            .Record();
    }

    [Fact]
    public void What_a_reorder_point_serves_is_as_recalled()
    {
        JsonElement one = s_all.GetProperty("memory").GetProperty("safety");
        LeadTimeUse use = new(Number(one, "mean"), Number(one, "deviation"));
        double at = Number(one, "reorderAt"),
            missing = use.Short(at);
        Evidence
            .Outside(
                "Service of a reorder point: probability, units short, part served",
                "S. Chopra, P. Meindl [LotTheory]",
                "memory",
                "rounding"
            )
            .Within(use.Served(at), Number(one, "served"), 0.005)
            .Within(missing, Number(one, "short"), 0.5)
            .Within(1 - missing / Number(one, "lot"), Number(one, "fill"), 5e-5)
            .Record();
    }

    [Fact]
    public void Orders_by_period_are_the_published_ones()
    {
        JsonElement one = s_all.GetProperty("dynamic");
        (double[] demand, double[] order, double[] until) = (Numbers(one, "demand"), Numbers(one, "order"), Numbers(one, "costUntil"));
        Evidence check = Evidence.Outside(
            "Orders by period: the twelve months of the paper, and its first months alone",
            "H. M. Wagner, T. M. Whitin [WagnerWhitin]",
            "read-secondary",
            "exact"
        );
        for (int count = 1; count <= demand.Length; count++)
        {
            LotAnswer part = DynamicLots.Answer(new DynamicDemand(demand[..count], order[..count], Same(Number(one, "holding"), count)));
            check.Within(part.Cost, until[count - 1], 1e-9);
        }

        LotAnswer whole = DynamicLots.Answer(new DynamicDemand(demand, order, Same(Number(one, "holding"), demand.Length)));
        check.Same(string.Join(' ', whole.Orders!), string.Join(' ', Numbers(one, "orders"))).Record();
    }

    private static EconomicDemand Economic(JsonElement one) =>
        new(Number(one, "perYear"), Number(one, "order"))
        {
            HoldingPerYear = Find(one, "holding"),
            HoldingRate = Find(one, "rate"),
            StockoutPerYear = Find(one, "stockout"),
            ProductionPerYear = Find(one, "production"),
            Prices = one.TryGetProperty("at", out _)
                ? new PriceBreaks(Numbers(one, "at"), Numbers(one, "price"), one.GetProperty("all").GetBoolean())
                : Single(one),
        };

    private static PriceBreaks? Single(JsonElement one) => Find(one, "price") is { } price ? PriceBreaks.Single(price) : null;

    private static NeedDistribution Need(JsonElement one) =>
        Find(one, "poisson") is { } mean ? new PoissonNeed(mean) : new NormalNeed(Numbers(one, "normal")[0], Numbers(one, "normal")[1]);

    private static double[] Same(double number, int count) => [.. Enumerable.Repeat(number, count)];

    private static double Number(JsonElement one, string name) => one.GetProperty(name).GetDouble();

    private static double? Find(JsonElement one, string name) => one.TryGetProperty(name, out JsonElement value) ? value.GetDouble() : null;

    private static double[] Numbers(JsonElement one, string name) =>
        [.. one.GetProperty(name).EnumerateArray().Select(value => value.GetDouble())];
}
