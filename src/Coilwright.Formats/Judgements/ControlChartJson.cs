using System.Text.Json;
using Coilwright.Workshop.ControlCharts;

namespace Coilwright.Formats.Judgements;

/// <summary>Writes the charts of a run of coils into "coilwright.judgement/1".</summary>
public static class ControlChartJson
{
    /// <summary>Writes "charts", "alarms" and "capability" into the object that is open.</summary>
    public static void Write(Utf8JsonWriter json, ControlChart wall)
    {
        json.WriteStartArray("charts");
        foreach (ChartSeries chart in wall.Charts)
        {
            json.WriteStartObject();
            json.WriteString("name", chart.Name);
            json.WriteString("unit", chart.InSigma ? "sigma" : "Ω");
            json.WriteNumber("centre", chart.Centre);
            json.WriteNumber("lowerLimit", chart.Low[^1]);
            json.WriteNumber("upperLimit", chart.High[^1]);
            json.WriteStartArray("points");
            for (int point = 0; point < chart.Values.Count; point++)
            {
                json.WriteStartObject();
                json.WriteString("tag", wall.Points[chart.Places[point]].Tag);
                json.WriteNumber("value", chart.Values[point]);
                if (chart.Second is { } second)
                {
                    json.WriteNumber("down", second[point]);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("signals");
            foreach (ChartSignal signal in wall.Signals.Where(signal => signal.Chart == chart.Name))
            {
                json.WriteStartObject();
                json.WriteString("tag", signal.Tag);
                json.WriteString("rule", signal.Rule);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteAlarms(json, wall);
        WriteCapability(json, wall);
    }

    private static void WriteAlarms(Utf8JsonWriter json, ControlChart wall)
    {
        json.WriteStartArray("alarms");
        foreach (FalseAlarmRate alarm in wall.Alarms)
        {
            json.WriteStartObject();
            json.WriteString("chart", alarm.Chart);
            json.WriteString("rule", alarm.Rule);
            if (alarm.Every is { } every)
            {
                json.WriteNumber("falseAlarmEvery", Math.Round(every, 2));
            }

            json.WriteString("basis", alarm.Basis);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteCapability(Utf8JsonWriter json, ControlChart wall)
    {
        json.WriteStartArray("capability");
        foreach (ChartCapabilityIndex index in wall.Capability)
        {
            json.WriteStartObject();
            json.WriteString("index", index.Name);
            json.WriteNumber("value", Math.Round(index.Index.Value, 4));
            json.WriteNumber("low", Math.Round(index.Index.Low, 4));
            json.WriteNumber("high", Math.Round(index.Index.High, 4));
            json.WriteString("basis", index.Basis);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("notes");
        foreach (string note in wall.Notes)
        {
            json.WriteStringValue(note);
        }

        json.WriteEndArray();
    }
}
