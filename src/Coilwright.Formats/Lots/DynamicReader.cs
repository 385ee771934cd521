using System.Globalization;
using Coilwright.Analysis.Lots;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Lots;

/// <summary>Reads a question about known needs in periods.</summary>
internal static class DynamicReader
{
    private const int MostPeriods = 1000;

    public static Demand Read(JsonFields fields)
    {
        IReadOnlyList<double> periods = fields.Numbers("periods", 0, DemandReader.Most, "[90, 120, 80, 70]", MostPeriods);
        if (fields.IsList("periods") && periods.Count == 0)
        {
            fields.Problems.Add(fields.PathOf("periods"), "there is no period", "[]", "1 period or more");
        }

        CheckLength(fields, periods.Count);
        return new DynamicDemand(
            periods,
            PerPeriod(fields, "orderCost", periods.Count),
            PerPeriod(fields, "holdingPerPeriod", periods.Count)
        )
        {
            PeriodsPerYear = fields.Number("periodsPerYear", DemandReader.Least, 10_000) ?? 12,
        };
    }

    private static void CheckLength(JsonFields fields, int periods)
    {
        bool hasMinimum = fields.Has("minimumLot");
        if (hasMinimum && periods > MinimumLotPlan.MostPeriods)
        {
            fields.Problems.Add(
                fields.PathOf("periods"),
                "with a minimumLot fewer periods can be planned exactly",
                string.Create(CultureInfo.InvariantCulture, $"{periods} periods"),
                string.Create(CultureInfo.InvariantCulture, $"1 to {MinimumLotPlan.MostPeriods}")
            );
        }
    }

    /// <summary>One number for all periods, or a list with one for each.</summary>
    private static IReadOnlyList<double> PerPeriod(JsonFields fields, string name, int periods)
    {
        if (!fields.IsList(name))
        {
            double same = fields.Number(name, 0, DemandReader.Most, required: true)!.Value;
            return [.. Enumerable.Repeat(same, periods)];
        }

        IReadOnlyList<double> each = fields.Numbers(name, 0, DemandReader.Most, null, MostPeriods);
        if (each.Count != periods)
        {
            fields.Problems.Add(
                fields.PathOf(name),
                "one number, or as many as there are periods",
                string.Create(CultureInfo.InvariantCulture, $"{each.Count} numbers"),
                string.Create(CultureInfo.InvariantCulture, $"{periods} numbers")
            );
        }

        return each;
    }
}
