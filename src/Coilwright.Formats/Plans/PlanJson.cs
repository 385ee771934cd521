using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Planning;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Formats.Plans;

/// <summary>Writes a plan in the file format "coilwright.plan/1": times in seconds from its start.</summary>
public static class PlanJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of the file, indented.</summary>
    /// <param name="list">What was planned.</param>
    /// <param name="plan">The plan, or the answer that there is none.</param>
    /// <param name="seconds">How long was searched at most, s.</param>
    public static string Write(JobList list, Schedule plan, double seconds)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.plan/1");
            json.WriteBoolean("feasible", plan.Feasible);
            json.WriteBoolean("optimal", plan.Optimal);
            json.WriteString("want", JobsReader.WordOf(list.Want));
            if (plan.Stopped)
            {
                json.WriteBoolean("stopped", true);
            }

            if (plan.Feasible)
            {
                WriteFigures(json, list, plan);
            }

            WriteSteps(json, list, plan);
            WriteLate(json, list, plan);
            WriteBecause(json, list, plan, seconds);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteFigures(Utf8JsonWriter json, JobList list, Schedule plan)
    {
        Time(json, "makespan", plan.MakespanS);
        if (list.Jobs.Any(job => job.DueS is not null))
        {
            Time(json, "tardiness", plan.TardinessS);
        }

        Time(json, "bound", plan.BoundS);
        json.WriteNumber("gap", plan.Gap(list.Want));
    }

    private static void WriteSteps(Utf8JsonWriter json, JobList list, Schedule plan)
    {
        json.WriteStartArray("steps");
        foreach (ScheduledStep one in plan.Steps)
        {
            json.WriteStartObject();
            json.WriteString("job", list.Jobs[one.Job].Name);
            json.WriteString("step", list.Jobs[one.Job].Steps[one.Step].Name);
            json.WriteString("station", list.Stations[one.Station].Name);
            Time(json, "start", one.StartS);
            Time(json, "end", one.EndS);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLate(Utf8JsonWriter json, JobList list, Schedule plan)
    {
        json.WriteStartArray("late");
        foreach (LateJob late in plan.Late)
        {
            json.WriteStartObject();
            json.WriteString("job", list.Jobs[late.Job].Name);
            Time(json, "by", late.ByS);
            json.WriteString("because", PlanReasons.Describe(list, late));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteBecause(Utf8JsonWriter json, JobList list, Schedule plan, double seconds)
    {
        if (plan.Feasible)
        {
            return;
        }

        json.WriteStartArray("because");
        foreach (string reason in PlanReasons.NoPlan(list, plan, seconds))
        {
            json.WriteStringValue(reason);
        }

        json.WriteEndArray();
    }

    private static void Time(Utf8JsonWriter json, string name, double seconds) =>
        PredictionJson.WriteQuantity(json, name, Estimate.Exact(seconds, Basis.Forecast), "s");
}
