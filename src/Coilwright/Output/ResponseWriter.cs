using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Output;

/// <summary>A response in its three forms: JSON (coilwright.response/1), CSV, and for people.</summary>
internal static class ResponseWriter
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

            Quantity(json, "level", answer.LevelDb, "dB");
            Quantity(json, "noise", answer.NoiseDbv, "dBV");
            WriteChange(json, answer);
            Write(json, "marks", answer.Marks, null);
            Write(json, "points", answer.Lines, answer.Against?.GainDb);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<ResponseLine> lines, IReadOnlyList<double>? changes)
    {
        if (lines.Count == 0)
        {
            return;
        }

        json.WriteStartArray(name);
        for (int i = 0; i < lines.Count; i++)
        {
            json.WriteStartObject();
            json.WriteNumber("frequency", lines[i].FrequencyHz);
            json.WriteNumber("gain", lines[i].GainDb);
            json.WriteNumber("phase", lines[i].PhaseDeg);
            json.WriteNumber("impedance", lines[i].ImpedanceOhm);
            if (changes is not null)
            {
                json.WriteNumber("change", changes[i]);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteChange(Utf8JsonWriter json, ResponseAnswer answer)
    {
        if (answer.Against is not { } against)
        {
            return;
        }

        json.WriteStartObject("change");
        json.WriteString("against", against.Name);
        Quantity(json, "level", against.LevelDb, "dB");
        if (answer.Peak is { } peak && against.Peak is { } other)
        {
            Quantity(json, "peakFrequency", 100 * (peak.FrequencyHz / other.FrequencyHz - 1), "%");
            Quantity(json, "peakGain", peak.GainDb - other.GainDb, "dB");
        }

        json.WriteEndObject();
    }

    public static string Csv(ResponseAnswer answer)
    {
        string[] change = answer.Against is null ? [] : ["change [dB]"];
        CsvTable csv = new(["frequency [Hz]", "gain [dB]", "phase [deg]", "impedance [Ω]", .. change]);
        foreach ((int at, ResponseLine line) in answer.Lines.Index())
        {
            double[] changed = answer.Against is { } against ? [against.GainDb[at]] : [];
            double[] row = [line.FrequencyHz, line.GainDb, line.PhaseDeg, line.ImpedanceOhm, .. changed];
            csv.Add([.. row.Select(value => value.ToString("R", CultureInfo.InvariantCulture))]);
        }

        return csv.ToString();
    }

    public static void Plain(TextWriter writer, string name, ResponseAnswer answer)
    {
        writer.WriteLine(name);
        writer.WriteLine(
            answer.Peak is { } peak
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"  peak   {FigureFormatter.Value(peak.FrequencyHz, "Hz", 4)}, {peak.GainDb:+0.0;-0.0} dB, Q {peak.Q:0.00}"
                )
                : "  no peak: the curve never rises above its level at 20 Hz"
        );
        writer.WriteLine(
            answer.Minus3DbHz is { } crossing
                ? $"  −3 dB  {FigureFormatter.Value(crossing, "Hz", 4)}"
                : "  −3 dB  not reached up to the last frequency"
        );
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  level at 20 Hz {answer.LevelDb:+0.00;-0.00} dB of the induced voltage; thermal noise {answer.NoiseDbv:0.0} dBV from "
                    + $"20 Hz to 20 kHz at 20 °C"
            )
        );
        foreach (ResponseLine line in answer.Marks)
        {
            writer.WriteLine(
                $"  at {FigureFormatter.Value(line.FrequencyHz, "Hz")}: {FigureFormatter.Value(line.GainDb, "dB")}, "
                    + $"{FigureFormatter.Value(line.ImpedanceOhm, "Ω")}"
            );
        }

        if (answer is { Against: { } against, Peak: { } now } && against.Peak is { } before)
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  against {against.Name}: peak {100 * (now.FrequencyHz / before.FrequencyHz - 1):+0.0;-0.0} %, "
                        + $"{now.GainDb - before.GainDb:+0.0;-0.0} dB; level {against.LevelDb:+0.00;-0.00} dB"
                )
            );
        }

        Table table = new("frequency", "gain", "phase", "impedance");
        int step = Math.Max(1, (answer.Lines.Count + 23) / 24);
        for (int index = 0; index < answer.Lines.Count; index += step)
        {
            ResponseLine line = answer.Lines[index];
            table.Add(
                FigureFormatter.Value(line.FrequencyHz, "Hz"),
                FigureFormatter.Value(line.GainDb, "dB"),
                line.PhaseDeg.ToString("0.0", CultureInfo.InvariantCulture) + "°",
                FigureFormatter.Value(line.ImpedanceOhm, "Ω")
            );
        }

        table.Write(writer);
    }

    private static void Quantity(Utf8JsonWriter json, string name, double value, string unit) =>
        PredictionJson.WriteQuantity(json, name, Estimate.Exact(value, Basis.Forecast), unit);
}

/// <summary>One frequency of a response.</summary>
internal readonly record struct ResponseLine(double FrequencyHz, double GainDb, double PhaseDeg, double ImpedanceOhm);

/// <summary>A response: its curve, its peak if it has one, and the last crossing of −3 dB.</summary>
internal sealed record ResponseAnswer(IReadOnlyList<ResponseLine> Lines, ResonancePeak? Peak, double? Minus3DbHz)
{
    /// <summary>Gain at 20 Hz, dB relative to the induced voltage.</summary>
    public double LevelDb { get; init; }

    /// <summary>Thermal noise at the output, dBV.</summary>
    public double NoiseDbv { get; init; }

    /// <summary>Points at frequencies asked for by name.</summary>
    public IReadOnlyList<ResponseLine> Marks { get; init; } = [];

    public ResponseChange? Against { get; init; }
}

/// <summary>
/// The change from another response: gain at each point, dB, each relative to its own 20 Hz; its peak; the change of the level at 20 Hz,
/// dB.
/// </summary>
internal sealed record ResponseChange(string Name, IReadOnlyList<double> GainDb, ResonancePeak? Peak, double LevelDb);
