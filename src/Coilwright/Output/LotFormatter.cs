using System.Globalization;
using Coilwright.Analysis.Lots;

namespace Coilwright.Output;

/// <summary>Writes what to order for a person.</summary>
internal static class LotFormatter
{
    public static void Write(TextWriter writer, Demand asked, LotAnswer answer)
    {
        WriteOrders(writer, answer.Orders);
        Line(writer, "Order", answer.Lot, "units");
        Line(writer, "When the stock falls to", answer.ReorderAt, "units");
        Line(writer, "A lot lasts", answer.CoverYears, "years");
        Line(writer, "Price of a unit", answer.Price, "");
        Line(writer, CostWords(asked), answer.Cost, "");
        Line(writer, "Use that waits", 100 * answer.BackorderShare, "%");
        Line(writer, "Safety stock", answer.SafetyStock, "units");
        Line(writer, "Nothing short", 100 * answer.ServiceLevel, "%");
        Line(writer, "Served from stock", 100 * answer.FillRate, "%");
        Line(writer, "Expires of each lot", answer.Expires, "units");
        foreach (string note in answer.Notes)
        {
            writer.WriteLine("Note: " + note);
        }

        if (answer.ShortOnce is { } once)
        {
            writer.WriteLine(
                $"If a unit short costs its money once, however long it is owed: order {Number(once.Lot)} when the stock falls to "
                    + Number(once.At)
            );
        }

        writer.WriteLine("How: " + answer.Method);
    }

    private static void WriteOrders(TextWriter writer, IReadOnlyList<double>? orders)
    {
        if (orders is null)
        {
            return;
        }

        Table table = new("period", "order");
        for (int period = 0; period < orders.Count; period++)
        {
            if (orders[period] > 0)
            {
                table.Add((period + 1).ToString(CultureInfo.InvariantCulture), Number(orders[period]));
            }
        }

        table.Write(writer);
    }

    private static string CostWords(Demand asked) =>
        asked switch
        {
            DynamicDemand => "Cost of the plan",
            OneTimeDemand => "Expected cost",
            _ => "Cost a year",
        };

    private static void Line(TextWriter writer, string words, double? value, string unit)
    {
        if (value is { } number)
        {
            writer.WriteLine($"{words}: {Number(number)} {unit}".TrimEnd());
        }
    }

    private static string Number(double value) => value.ToString("#,##0.##", CultureInfo.InvariantCulture);
}
