using System.Globalization;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Entry;

namespace Coilwright.Output;

/// <summary>Writes the charts of a run of coils for people.</summary>
internal static class ControlChartFormatter
{
    public static void Write(TextWriter writer, ControlChart wall)
    {
        Table charts = new("chart", "middle", "limits", "signals");
        foreach (ChartSeries chart in wall.Charts)
        {
            charts.Add(
                chart.Name,
                Value(chart, chart.Centre),
                $"{Value(chart, chart.Low[^1])} to {Value(chart, chart.High[^1])}",
                wall.Signals.Count(signal => signal.Chart == chart.Name).ToString(CultureInfo.InvariantCulture)
            );
        }

        charts.Write(writer, "");
        foreach (SignalRun spell in wall.SignalRuns())
        {
            writer.WriteLine($"Signal at {spell.First.Tag}{(spell.Count > 1 ? $" to {spell.Last.Tag}" : "")}: {spell.Chart}, {spell.Rule}");
        }

        writer.WriteLine($"Limits from the first {wall.LimitsFrom}; coils rejected or in doubt ({wall.LeftOut}) are left out.");
        foreach (FalseAlarmRate alarm in wall.Alarms.Where(alarm => alarm.Every is not null))
        {
            writer.WriteLine(
                FormattableString.Invariant($"{alarm.Chart}, {alarm.Rule}: one false alarm in {alarm.Every:0.#} points ({alarm.Basis})")
            );
        }

        foreach (ChartCapabilityIndex index in wall.Capability)
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{index.Name} {index.Index.Value:0.00}, 95 % interval {index.Index.Low:0.00} to "
                        + $"{index.Index.High:0.00} ({index.Basis})"
                )
            );
        }

        foreach (string note in wall.Notes)
        {
            writer.WriteLine(char.ToUpperInvariant(note[0]) + note[1..] + ".");
        }
    }

    private static string Value(ChartSeries chart, double value) =>
        chart.InSigma
            ? string.Create(CultureInfo.InvariantCulture, $"{value:0.##} sigma")
            : QuantityParser.Format(value, QuantityKind.Resistance, 4);
}
