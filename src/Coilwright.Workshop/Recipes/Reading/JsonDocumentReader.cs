using System.Globalization;
using System.Text;
using System.Text.Json;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Opens a document: its size, its JSON and its <c>format</c> field, before its content is read.</summary>
public static class JsonDocumentReader
{
    /// <summary>Longest document that is read, in characters.</summary>
    public const int Longest = 4_000_000;

    private static readonly JsonDocumentOptions s_options = new()
    {
        AllowTrailingCommas = false,
        CommentHandling = JsonCommentHandling.Disallow,
        MaxDepth = 32,
    };

    /// <summary>
    /// Reads a whole document of one format; the value is null unless there is no problem at all. With <paramref name="pointOnly"/> a comma
    /// in a number is refused, as in a file that was handed in.
    /// </summary>
    public static ReadOutcome<T> Read<T>(string json, string format, Func<JsonFields, T> read, bool pointOnly = false)
        where T : class
    {
        ProblemList problems = new() { PointOnly = pointOnly };
        if (json.Length > Longest)
        {
            problems.Add(
                "",
                "this document is too long",
                null,
                string.Create(CultureInfo.InvariantCulture, $"at most {Longest} characters")
            );
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
            problems.Add("", BrokenJson.Describe(json.TrimStart('\uFEFF'), broken.LineNumber ?? 0, broken.BytePositionInLine ?? 0));
        }
        catch (InvalidOperationException)
        {
            problems.Add("", "a text in this document holds half of a two-part character; remove it");
        }

        return new ReadOutcome<T>(null, problems.All);
    }

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
