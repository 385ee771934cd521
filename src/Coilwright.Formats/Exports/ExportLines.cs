using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>Rows of an export as lines of their file.</summary>
public static class ExportLines
{
    private static readonly JsonWriterOptions s_json = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>True for a table that is written as CSV; the others have one JSON object a line.</summary>
    public static bool IsCsv(ExportTable table) => table.File.EndsWith(".csv", StringComparison.Ordinal);

    /// <summary>The first line of a CSV file; empty for others.</summary>
    public static string Header(ExportTable table) =>
        IsCsv(table) ? string.Join(',', table.Columns.Select(column => Quoted(column.Name))) + "\n" : "";

    /// <summary>A row as its line, with the line's end.</summary>
    public static string Line(ExportTable table, IReadOnlyList<object?> row) => IsCsv(table) ? Csv(table, row) : Json(table, row);

    /// <summary>Name of the document of a row, with its folder; null where the table has none.</summary>
    public static string? DocumentOf(ExportTable table, IReadOnlyList<object?> row)
    {
        if (!table.Columns.Any(column => column.Kind == ExportKind.Document))
        {
            return null;
        }

        string folder = table.Records == "Revisions" ? "recipes" : Path.GetFileNameWithoutExtension(table.File);
        return $"{folder}/{string.Join('-', table.Keys[0].Columns.Select(key => ExportCells.Text(row[table.PlaceOf(key)])))}.json";
    }

    private static string Csv(ExportTable table, IReadOnlyList<object?> row)
    {
        StringBuilder line = new();
        for (int at = 0; at < table.Columns.Count; at++)
        {
            string text = table.Columns[at].Kind == ExportKind.Document ? DocumentOf(table, row)! : ExportCells.Text(row[at]);
            line.Append(at > 0 ? "," : "").Append(Quoted(table.Columns[at].Kind == ExportKind.Text ? ExportCells.Guard(text) : text));
        }

        return line.Append('\n').ToString();
    }

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",\"\n\r") >= 0 || (cell.Length > 0 && (char.IsWhiteSpace(cell[0]) || char.IsWhiteSpace(cell[^1])))
            ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : cell;

    private static string Json(ExportTable table, IReadOnlyList<object?> row)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes, s_json))
        {
            json.WriteStartObject();
            for (int at = 0; at < table.Columns.Count; at++)
            {
                if (row[at] is { } value)
                {
                    json.WritePropertyName(table.Columns[at].Name);
                    Write(json, table.Columns[at].Kind, value);
                }
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }

    private static void Write(Utf8JsonWriter json, ExportKind kind, object value)
    {
        switch (value)
        {
            case double or long:
                json.WriteRawValue(ExportCells.Text(value));
                break;
            case bool flag:
                json.WriteBooleanValue(flag);
                break;
            case string text when kind == ExportKind.Json:
                json.WriteRawValue(OnOneLine(text));
                break;
            default:
                json.WriteStringValue(ExportCells.Text(value));
                break;
        }
    }

    /// <summary>A JSON text as it is kept, but for line ends between its parts.</summary>
    private static string OnOneLine(string text)
    {
        if (text.AsSpan().IndexOfAny('\n', '\r') < 0)
        {
            return text;
        }

        using JsonDocument document = JsonDocument.Parse(text);
        return JsonSerializer.Serialize(document.RootElement, s_compact);
    }

    private static readonly JsonSerializerOptions s_compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
