using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Words;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Output;

/// <summary>A response in its three forms: JSON (coilwright.response/1), CSV, and for people.</summary>
internal static class ResponseText
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Json(ResponseAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.response/1");
            if (answer.Peak is { } peak)
            {
                json.WriteStartObject("peak");
                Quantity(json, "frequency", peak.FrequencyHz, "Hz");
                Quantity(json, "gain", peak.GainDb, "dB");
                Quantity(json, "q", peak.Q, "1");
                json.WriteEndObject();
            }

            if (answer.Minus3DbHz is { } crossing)
            {
                Quantity(json, "minus3dB", crossing, "Hz");
            }

            json.WriteStartArray("points");
            foreach (ResponseLine line in answer.Lines)
            {
                json.WriteStartObject();
                json.WriteNumber("frequency", line.FrequencyHz);
                json.WriteNumber("gain", line.GainDb);
                json.WriteNumber("phase", line.PhaseDeg);
                json.WriteNumber("impedance", line.ImpedanceOhm);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public static string Csv(ResponseAnswer answer)
    {
        StringBuilder csv = new("frequency [Hz],gain [dB],phase [deg],impedance [Ω]\n");
        foreach (ResponseLine line in answer.Lines)
        {
            csv.Append(CultureInfo.InvariantCulture, $"{line.FrequencyHz:R},{line.GainDb:R},{line.PhaseDeg:R},{line.ImpedanceOhm:R}\n");
        }

        return csv.ToString();
    }

    public static void Plain(TextWriter writer, string name, ResponseAnswer answer)
    {
        writer.WriteLine(name);
        writer.WriteLine(answer.Peak is { } peak
            ? string.Create(CultureInfo.InvariantCulture, $"  peak   {FigureWords.Value(peak.FrequencyHz, "Hz", 4)}, {peak.GainDb:+0.0;-0.0} dB, Q {peak.Q:0.00}")
            : "  no peak: the curve never rises above its level at 20 Hz");
        writer.WriteLine(answer.Minus3DbHz is { } crossing ? $"  −3 dB  {FigureWords.Value(crossing, "Hz", 4)}" : "  −3 dB  not reached up to the last frequency");
        Table table = new("frequency", "gain", "phase", "impedance");
        int step = Math.Max(1, (answer.Lines.Count + 23) / 24);
        for (int index = 0; index < answer.Lines.Count; index += step)
        {
            ResponseLine line = answer.Lines[index];
            table.Add(FigureWords.Value(line.FrequencyHz, "Hz"), FigureWords.Value(line.GainDb, "dB"), line.PhaseDeg.ToString("0.0", CultureInfo.InvariantCulture) + "°", FigureWords.Value(line.ImpedanceOhm, "Ω"));
        }

        table.Write(writer);
    }

    private static void Quantity(Utf8JsonWriter json, string name, double value, string unit) =>
        PredictionJson.WriteQuantity(json, name, Estimate.Exact(value, Basis.Forecast), unit);
}

/// <summary>One frequency of a response.</summary>
internal readonly record struct ResponseLine(double FrequencyHz, double GainDb, double PhaseDeg, double ImpedanceOhm);

/// <summary>A response: its curve, its peak if it has one, and the last crossing of −3 dB.</summary>
internal sealed record ResponseAnswer(IReadOnlyList<ResponseLine> Lines, ResonancePeak? Peak, double? Minus3DbHz);
