using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Solving;

namespace Coilwright.Formats.Forecasts;

/// <summary>Writes solutions in the public file format "coilwright.solutions/1".</summary>
public static class SolutionsJson
{
    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(Solutions solutions)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.solutions/1");
            json.WriteBoolean("met", solutions.Met);
            WriteAll(json, "solutions", solutions.Ranked);
            WriteAll(json, "front", solutions.Front);
            json.WriteStartArray("frontAxes");
            foreach (Analysis.Solving.FrontAxis axis in solutions.Axes)
            {
                json.WriteStartObject();
                json.WriteString("quantity", axis.Quantity);
                json.WriteString("better", axis.Most ? "more" : "less");
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteTexts(json, "binding", solutions.Binding);
            WriteTexts(json, "notes", solutions.Notes);
            json.WriteNumber("searched", solutions.Searched);
            if (solutions.Stopped)
            {
                json.WriteBoolean("stopped", true);
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteAll(Utf8JsonWriter json, string name, IReadOnlyList<Solution> solutions)
    {
        json.WriteStartArray(name);
        foreach (Solution solution in solutions)
        {
            json.WriteStartObject();
            json.WritePropertyName("changes");
            JsonSerializer.Serialize(json, solution.Changes);
            WriteTexts(json, "missed", solution.Missed);
            json.WriteStartObject("quantities");
            foreach ((string quantity, double value) in solution.Values)
            {
                json.WriteNumber(quantity, value);
            }

            json.WriteEndObject();
            WriteIntervals(json, solution.Prediction);
            json.WritePropertyName("recipe");
            WriteDocument(json, solution.RecipeJson);
            json.WritePropertyName("prediction");
            WriteDocument(json, PredictionJson.Write(solution.Prediction));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The 95 % interval of each quantity that has one.</summary>
    private static void WriteIntervals(Utf8JsonWriter json, Prediction prediction)
    {
        json.WriteStartObject("intervals");
        foreach (
            NamedFigure figure in prediction.Named.Values.Where(figure =>
                !figure.Estimate.IsExact && double.IsFinite(figure.Estimate.Low) && double.IsFinite(figure.Estimate.High)
            )
        )
        {
            json.WriteStartObject(figure.Name);
            json.WriteNumber("low", figure.Estimate.Low);
            json.WriteNumber("high", figure.Estimate.High);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteDocument(Utf8JsonWriter json, string document)
    {
        using JsonDocument parsed = JsonDocument.Parse(document);
        parsed.RootElement.WriteTo(json);
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
