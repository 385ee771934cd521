using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Walls;

namespace Coilwright.Output;

/// <summary>Writes the charts of a run of coils for people.</summary>
internal static class PlainWall
{
    public static void Write(TextWriter writer, Wall wall)
    {
        Table charts = new("chart", "middle", "limits", "signals");
        foreach (WallSeries chart in wall.Charts)
        {
            charts.Add(chart.Name, Value(chart, chart.Centre), $"{Value(chart, chart.Low[^1])} to {Value(chart, chart.High[^1])}", wall.Signals.Count(signal => signal.Chart == chart.Name).ToString(CultureInfo.InvariantCulture));
        }

        charts.Write(writer, "");
        foreach (WallSpell spell in wall.Spells())
        {
            writer.WriteLine($"Signal at {spell.First.Tag}{(spell.Count > 1 ? $" to {spell.Last.Tag}" : "")}: {spell.Chart}, {spell.Rule}");
        }

        writer.WriteLine($"Limits from the first {wall.LimitsFrom}; coils rejected or in doubt ({wall.LeftOut}) are left out.");
        foreach (WallAlarm alarm in wall.Alarms.Where(alarm => alarm.Every is not null))
        {
            writer.WriteLine(FormattableString.Invariant($"{alarm.Chart}, {alarm.Rule}: one false alarm in {alarm.Every:0.#} points ({alarm.Basis})"));
        }

        foreach (WallIndex index in wall.Capability)
        {
            writer.WriteLine(FormattableString.Invariant($"{index.Name} {index.Index.Value:0.00}, 95 % interval {index.Index.Low:0.00} to {index.Index.High:0.00} ({index.Basis})"));
        }

        foreach (string note in wall.Notes)
        {
            writer.WriteLine(char.ToUpperInvariant(note[0]) + note[1..] + ".");
        }
    }

    private static string Value(WallSeries chart, double value) =>
        chart.InSigma ? string.Create(CultureInfo.InvariantCulture, $"{value:0.##} sigma") : QuantityText.Format(value, QuantityKind.Resistance, 4);
}
