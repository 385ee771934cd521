using System.Globalization;
using System.Text;
using System.Text.Json;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Opens a document: its size, its JSON and its <c>format</c> field, before its content is read.</summary>
internal static class JsonText
{
    /// <summary>Longest document that is read, in characters.</summary>
    public const int Longest = 4_000_000;

    private static readonly JsonDocumentOptions s_options = new() { AllowTrailingCommas = false, CommentHandling = JsonCommentHandling.Disallow, MaxDepth = 32 };

    /// <summary>Reads a whole document of one format; the value is null unless there is no problem at all.</summary>
    public static ReadOutcome<T> Read<T>(string json, string format, Func<JsonFields, T> read)
        where T : class
    {
        ProblemList problems = new();
        if (json.Length > Longest)
        {
            problems.Add("", "this document is too long", null, string.Create(CultureInfo.InvariantCulture, $"at most {Longest} characters"));
            return new ReadOutcome<T>(null, problems.All);
        }

        try
        {
            // Handed over as bytes: a lone half of a surrogate pair then counts as bad JSON instead of an argument error.
            using JsonDocument document = JsonDocument.Parse(Encoding.UTF8.GetBytes(json.TrimStart('\uFEFF')), s_options);
            T? value = JsonFields.Read(document.RootElement, "", problems, fields =>
            {
                CheckFormat(fields, format);
                return read(fields);
            });
            return new ReadOutcome<T>(problems.All.Count == 0 ? value : null, problems.All);
        }
        catch (JsonException broken)
        {
            problems.Add("", NotJson(broken));
        }
        catch (InvalidOperationException)
        {
            problems.Add("", "a text in this document holds half of a two-part character (\\ud800 to \\udfff); remove it");
        }

        return new ReadOutcome<T>(null, problems.All);
    }

    private static string NotJson(JsonException broken) => string.Create(
        CultureInfo.InvariantCulture,
        $"this is not valid JSON at line {(broken.LineNumber ?? 0) + 1}, column {(broken.BytePositionInLine ?? 0) + 1}: {broken.Message.Split(" LineNumber", StringSplitOptions.None)[0]}");

    private static void CheckFormat(JsonFields fields, string format)
    {
        string given = fields.Text("format", format);
        if (given.Length == 0 || given == format)
        {
            return;
        }

        string stem = format[..(format.IndexOf('/', StringComparison.Ordinal) + 1)];
        string message = given.StartsWith(stem, StringComparison.Ordinal)
            ? "this version of the format is newer than this program, or none at all; use a newer program"
            : "this is another kind of document";
        fields.Problems.Add("format", message, $"\"{given}\"", format);
    }
}
