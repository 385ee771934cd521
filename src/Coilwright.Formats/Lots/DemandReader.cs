using Coilwright.Analysis.Lots;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Lots;

/// <summary>Reads a question about lots (format coilwright.demand/1) and tells every mistake at once.</summary>
public static class DemandReader
{
    /// <summary>The format's name.</summary>
    public const string Format = "coilwright.demand/1";

    /// <summary>Largest number of units or money in a file.</summary>
    public const double Most = 1e9;

    /// <summary>Smallest number where nothing is not allowed.</summary>
    public const double Least = 1e-6;

    private static readonly Dictionary<string, Func<JsonFields, Demand>> s_kinds = new(StringComparer.Ordinal)
    {
        ["economic"] = EconomicReader.Read,
        ["dynamic"] = DynamicReader.Read,
        ["once"] = OneTimeReader.Read,
        ["reorder"] = ReadReorder,
    };

    /// <summary>The question of a file, or every problem.</summary>
    /// <param name="json">The text of the file.</param>
    public static ReadOutcome<Demand> Read(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static Demand Whole(JsonFields fields)
    {
        fields.Free("name", "notes");
        string? kind = fields.Word("kind", s_kinds.Keys, required: true);
        if (kind is null)
        {
            FreeAll(fields);
            return null!; // the missing kind is a problem, with which no value is handed on
        }

        Demand demand = s_kinds[kind](fields);
        return demand with
        {
            MinimumLot = fields.Number("minimumLot", 0, Most) ?? 0,
            ShelfLifeYears = fields.Number("shelfLifeYears", Least, 1000),
        };
    }

    private static ReorderDemand ReadReorder(JsonFields fields) =>
        new(
            PerYear: Needed(fields, "demandPerYear"),
            DeviationPerYear: fields.Number("demandDeviationPerYear", 0, Most, required: true)!.Value,
            LeadTimeYears: fields.Number("leadTimeYears", 0, 100, required: true)!.Value,
            OrderCost: Needed(fields, "orderCost"),
            HoldingPerYear: Needed(fields, "holdingPerYear"),
            StockoutEach: Needed(fields, "stockoutEach")
        );

    /// <summary>A number above zero that must be there; NaN when it is not.</summary>
    internal static double Needed(JsonFields fields, string name) => fields.Number(name, Least, Most, required: true)!.Value;

    /// <summary>Without a kind nothing can be said of the other fields.</summary>
    private static void FreeAll(JsonFields fields) =>
        fields.Free([
            .. (string[])["minimumLot", "shelfLifeYears", "demandPerYear", "orderCost", "holdingPerYear", "holdingRate", "price"],
            .. (string[])["priceBreaks", "productionPerYear", "stockoutPerYear", "periods", "holdingPerPeriod", "periodsPerYear"],
            .. (string[])["overage", "underage", "distribution", "demandDeviationPerYear", "leadTimeYears", "stockoutEach"],
        ]);
}
