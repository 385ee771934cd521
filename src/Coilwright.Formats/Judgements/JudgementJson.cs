using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Formats.Forecasts;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Formats.Judgements;

/// <summary>One judged coil or piece.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Carried">Columns of the shop's own, carried through.</param>
public sealed record JudgedPiece(string Tag, Verdict Verdict, IReadOnlyDictionary<string, string>? Carried = null);

/// <summary>Writes judgements in the file format "coilwright.judgement/1".</summary>
public static class JudgementJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(
        IReadOnlyList<JudgedPiece> pieces,
        RunChart? chart,
        ControlChart? wall = null,
        IReadOnlyList<BatchRemark>? remarks = null
    )
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.judgement/1");
            json.WriteStartArray("pieces");
            foreach (JudgedPiece piece in pieces)
            {
                WritePiece(json, piece);
            }

            json.WriteEndArray();
            WriteBatch(json, remarks ?? []);
            json.WriteStartObject("chart");
            json.WriteStartArray("signals");
            foreach ((string tag, string rule) in chart?.Signals ?? [])
            {
                json.WriteStartObject();
                json.WriteString("tag", tag);
                json.WriteString("rule", rule);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteLimits(json, chart);
            if (wall is not null)
            {
                ControlChartJson.Write(json, wall);
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>What is said of the batch: the words alone, and each with its evidence and quickest check.</summary>
    private static void WriteBatch(Utf8JsonWriter json, IReadOnlyList<BatchRemark> remarks)
    {
        json.WriteStartArray("remarks");
        foreach (BatchRemark remark in remarks)
        {
            json.WriteStringValue(remark.Words);
        }

        json.WriteEndArray();
        json.WriteStartArray("batch");
        foreach (BatchRemark remark in remarks)
        {
            json.WriteStartObject();
            json.WriteString("finding", remark.Name);
            json.WriteString("detail", remark.Words);
            json.WriteString("evidence", remark.Evidence);
            json.WriteString("check", remark.Check);
            if (remark.From.Length > 0)
            {
                json.WriteString("from", remark.From);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLimits(Utf8JsonWriter json, RunChart? chart)
    {
        if (chart is not null)
        {
            json.WriteString("rules", BatchChart.Rules);
            json.WriteNumber("falseAlarmEvery", Math.Round(chart.FalseAlarmEvery, 2));
            json.WriteNumber("centre", chart.Centre);
            json.WriteNumber("lowerLimit", chart.LowerLimit);
            json.WriteNumber("upperLimit", chart.UpperLimit);
            json.WriteNumber("limitsFrom", chart.LimitsFrom);
            json.WriteString("unit", "Ω");
        }
    }

    private static void WritePiece(Utf8JsonWriter json, JudgedPiece piece)
    {
        json.WriteStartObject();
        json.WriteString("tag", piece.Tag);
        json.WriteString(
            "verdict",
            piece.Verdict.Kind switch
            {
                VerdictKind.Pass => "pass",
                VerdictKind.Hold => "hold",
                _ => "reject",
            }
        );
        if (piece.Verdict.DcResistanceAt20C is { } ohm)
        {
            PredictionJson.WriteQuantity(json, "dcResistanceAt20C", ohm, "Ω");
        }

        json.WriteStartArray("reasons");
        foreach (string reason in piece.Verdict.Reasons)
        {
            json.WriteStringValue(reason);
        }

        json.WriteEndArray();
        WriteCauses(json, piece.Verdict.Causes);
        json.WriteStartArray("together");
        foreach (string key in piece.Verdict.Told.Count > 0 ? piece.Verdict.Group : [])
        {
            json.WriteStringValue(key);
        }

        json.WriteEndArray();
        json.WriteString("cause", VerdictAdvice.Cause(piece.Verdict));
        json.WriteString("check", VerdictAdvice.Check(piece.Verdict));
        json.WriteStartArray("nextReading");
        foreach (NextReading next in piece.Verdict.Next)
        {
            json.WriteStartObject();
            json.WriteString("quantity", next.Quantity);
            json.WriteNumber("information", Math.Round(next.Information, 4));
            json.WriteNumber("minutes", next.Minutes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (piece.Carried is { Count: > 0 })
        {
            json.WriteStartObject("columns");
            foreach ((string heading, string cell) in piece.Carried)
            {
                json.WriteString(heading, cell);
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteCauses(Utf8JsonWriter json, IReadOnlyList<Cause> causes)
    {
        json.WriteStartArray("causes");
        foreach (Cause cause in causes)
        {
            json.WriteStartObject();
            json.WriteString("cause", cause.Name);
            json.WriteNumber("probability", cause.Probability);
            json.WriteString("detail", cause.Detail);
            if (cause.OfBatch)
            {
                json.WriteBoolean("ofBatch", true);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
