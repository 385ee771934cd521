using System.Globalization;
using Coilwright.Formats.Csv;
using Coilwright.Workshop.ControlCharts;

namespace Coilwright.Formats.Judgements;

/// <summary>Writes a control chart as a table, a row for each coil.</summary>
public static class ControlChartCsv
{
    /// <summary>Every drawn coil as a table.</summary>
    public static string Write(ControlChart wall)
    {
        string unit = wall.Question.Quantity switch
        {
            "dcResistance" => "Ω",
            "inductance" => "H",
            _ => "1",
        };
        CsvTable csv = new([
            .. (string[])["batch", "tag", $"{wall.Question.Quantity} [{unit}]", "person", "time", "left out", "temperature known"],
            .. wall.Charts.SelectMany(chart => chart.Second is null ? [chart.Name] : new[] { $"{chart.Name} up", $"{chart.Name} down" }),
            "signals",
        ]);
        (ChartSeries Chart, Dictionary<int, int> Places)[] charts =
        [
            .. wall.Charts.Select(chart => (chart, chart.Places.Index().ToDictionary(at => at.Item, at => at.Index))),
        ];
        ILookup<int, ChartSignal> signals = wall.Signals.ToLookup(signal => signal.Index);
        foreach ((int place, ChartedCoil point) in wall.Points.Index())
        {
            csv.Add([
                point.Batch,
                point.Tag,
                Number(point.Value),
                point.Person,
                point.TimeUtc?.ToString("O", CultureInfo.InvariantCulture) ?? "",
                point.LeftOut ? "yes" : "",
                point.TemperatureKnown ? "yes" : "no",
                .. charts.SelectMany(one => Cells(one.Chart, one.Places.TryGetValue(place, out int at) ? at : null)),
                string.Join("; ", signals[place].Select(signal => $"{signal.Chart}: {signal.Rule}")),
            ]);
        }

        return csv.ToString();
    }

    /// <summary>One or two cells of a chart; empty where it has no point.</summary>
    private static IEnumerable<string> Cells(ChartSeries chart, int? at) =>
        new[] { chart.Values, chart.Second }.OfType<IReadOnlyList<double>>().Select(values => at is { } index ? Number(values[index]) : "");

    private static string Number(double value) => value.ToString("G9", CultureInfo.InvariantCulture);
}
