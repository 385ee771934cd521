using System.Globalization;
using Coilwright.Analysis.Lots;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Lots;

/// <summary>Reads a question about steady use.</summary>
internal static class EconomicReader
{
    private const int MostBreaks = 50;

    public static Demand Read(JsonFields fields)
    {
        PriceBreaks? prices = Prices(fields);
        EconomicDemand demand = new(DemandReader.Needed(fields, "demandPerYear"), DemandReader.Needed(fields, "orderCost"))
        {
            HoldingPerYear = fields.Number("holdingPerYear", DemandReader.Least, DemandReader.Most),
            HoldingRate = fields.Number("holdingRate", DemandReader.Least, 100),
            ProductionPerYear = fields.Number("productionPerYear", DemandReader.Least, DemandReader.Most),
            StockoutPerYear = fields.Number("stockoutPerYear", DemandReader.Least, DemandReader.Most),
            Prices = prices,
        };
        CheckKeeping(fields, demand);
        CheckProduction(fields, demand);
        return demand;
    }

    private static void CheckKeeping(JsonFields fields, EconomicDemand demand)
    {
        if (demand.HoldingPerYear is null == demand.HoldingRate is null)
        {
            fields.Problems.Add(
                fields.PathOf("holdingPerYear"),
                "say what keeping costs in one of two ways: holdingPerYear (money a unit and year) or holdingRate (a part of the price)",
                allowed: "one of the two"
            );
        }

        if (demand.HoldingRate is not null && !fields.Has("priceBreaks") && !fields.Has("price"))
        {
            fields.Problems.Add(
                fields.PathOf("holdingRate"),
                "a part of the price needs the price: give \"price\" or \"priceBreaks\", or holdingPerYear instead"
            );
        }

        if (demand is { HoldingRate: not null, StockoutPerYear: not null, Prices: { AllUnits: false, At.Count: > 1 } })
        {
            fields.Problems.Add(
                fields.PathOf("stockoutPerYear"),
                "waiting cannot be weighed with prices for the units beyond each break and a holdingRate: give holdingPerYear instead"
            );
        }
    }

    private static void CheckProduction(JsonFields fields, EconomicDemand demand)
    {
        if (demand.ProductionPerYear <= demand.PerYear)
        {
            fields.Problems.Add(
                fields.PathOf("productionPerYear"),
                "what is made must be more than what is used, or the stock never fills",
                demand.ProductionPerYear?.ToString(CultureInfo.InvariantCulture),
                FormattableString.Invariant($"above {demand.PerYear}")
            );
        }
    }

    private static PriceBreaks? Prices(JsonFields fields)
    {
        double? single = fields.Number("price", DemandReader.Least, DemandReader.Most);
        PriceBreaks? breaks = fields.Object("priceBreaks", ReadBreaks);
        if (single is not null && fields.Has("priceBreaks"))
        {
            fields.Problems.Add(fields.PathOf("price"), "the price stands in priceBreaks already; keep one of the two");
        }

        return breaks ?? (single is { } price ? PriceBreaks.Single(price) : null);
    }

    private static PriceBreaks ReadBreaks(JsonFields fields)
    {
        IReadOnlyList<double> at = fields.Numbers("at", 0, DemandReader.Most, "[0, 200, 500]", MostBreaks),
            price = fields.Numbers("price", DemandReader.Least, DemandReader.Most, "[500, 475, 450]", MostBreaks);
        if (at.Count != price.Count || (fields.Has("at") && at.Count == 0))
        {
            fields.Problems.Add(
                fields.PathOf("price"),
                "each size needs its price",
                string.Create(CultureInfo.InvariantCulture, $"{at.Count} sizes and {price.Count} prices"),
                "as many prices as sizes, one or more"
            );
        }

        if (at.Count > 0 && at[0] > 0)
        {
            fields.Problems.Add(fields.PathOf("at[0]"), "the first price holds from nothing on", $"{at[0]}", "0");
        }

        CheckOrder(fields, "at", at, -1, "sizes must rise from break to break");
        CheckOrder(fields, "price", price, 1, "prices must fall from break to break");
        return new PriceBreaks(at.Count > 0 ? at : [0], price.Count > 0 ? price : [1], fields.Truth("all") ?? true);
    }

    private static void CheckOrder(JsonFields fields, string name, IReadOnlyList<double> numbers, int sign, string why)
    {
        for (int at = 1; at < numbers.Count; at++)
        {
            if (sign * (numbers[at] - numbers[at - 1]) >= 0)
            {
                fields.Problems.Add(
                    fields.PathOf(string.Create(CultureInfo.InvariantCulture, $"{name}[{at}]")),
                    why,
                    numbers[at].ToString(CultureInfo.InvariantCulture),
                    FormattableString.Invariant($"{(sign < 0 ? "above" : "below")} {numbers[at - 1]}")
                );
            }
        }
    }
}
