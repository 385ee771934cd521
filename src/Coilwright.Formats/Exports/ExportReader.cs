using System.Text;
using System.Text.Json;
using Coilwright.Physics;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>A row of an export with the line it begins on.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Row">Its values in the order of the columns; null when some cannot be read.</param>
public sealed record ExportRow(long Line, object?[]? Row);

/// <summary>Reads the files of an export, row by row.</summary>
/// <param name="folder">The folder.</param>
/// <param name="problems">Takes what is wrong.</param>
public sealed class ExportReader(string folder, ImportProblems problems)
{
    /// <summary>A document is a few thousand letters; more is none.</summary>
    private const long LongestDocument = 16_000_000;

    private static readonly UTF8Encoding s_utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static readonly JsonDocumentOptions s_strict = new() { AllowDuplicateProperties = false };

    /// <summary>The text of a file of the export; null, and a problem, when it cannot be read.</summary>
    public string? Text(string name)
    {
        string path = Path.Combine(folder, name);
        try
        {
            if (!File.Exists(path))
            {
                problems.Add(name, 0, "", "there is no such file in the export");
            }
            else if (new FileInfo(path).Length > LongestDocument)
            {
                problems.Add(name, 0, "", "this is too long to be one of ours", null, "up to 16 MB");
            }
            else
            {
                return s_utf8.GetString(File.ReadAllBytes(path));
            }
        }
        catch (DecoderFallbackException)
        {
            problems.Add(name, 0, "", "this is not text; a file in UTF-8 is needed");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            problems.Add(name, 0, "", "this file cannot be read");
        }

        return null;
    }

    /// <summary>Every row of a table.</summary>
    public IEnumerable<ExportRow> Rows(ExportTable table)
    {
        string path = Path.Combine(folder, table.File);
        if (!File.Exists(path))
        {
            problems.Add(table.File, 0, "", "there is no such file in the export");
            yield break;
        }

        using StreamReader text = new(path, s_utf8, detectEncodingFromByteOrderMarks: true);
        IEnumerator<ExportRow> rows = (ExportLines.IsCsv(table) ? Csv(table, text) : Json(table, text)).GetEnumerator();
        using (rows)
        {
            while (Move(table, rows))
            {
                yield return rows.Current;
            }
        }
    }

    private bool Move(ExportTable table, IEnumerator<ExportRow> rows)
    {
        try
        {
            return rows.MoveNext();
        }
        catch (DecoderFallbackException)
        {
            problems.Add(table.File, 0, "", "this is not text; a file in UTF-8 is needed");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            problems.Add(table.File, 0, "", "this file cannot be read");
        }

        return false;
    }

    private IEnumerable<ExportRow> Csv(ExportTable table, TextReader text)
    {
        CsvRecords records = new(text);
        int[]? places = records.Next() is { } header ? Places(table, header.Cells) : Places(table, []);
        while (places is not null && records.Next() is { } record)
        {
            if (record.Complaint.Length > 0)
            {
                problems.Add(table.File, record.Line, "", record.Complaint);
                yield return new ExportRow(record.Line, null);
            }
            else if (record.Cells.Count != places.Length)
            {
                problems.Add(
                    table.File,
                    record.Line,
                    "",
                    "the line has not as many cells as the header",
                    FormattableString.Invariant($"{record.Cells.Count}"),
                    FormattableString.Invariant($"{places.Length}")
                );
                yield return new ExportRow(record.Line, null);
            }
            else
            {
                string?[] cells = new string?[table.Columns.Count];
                for (int at = 0; at < places.Length; at++)
                {
                    cells[places[at]] = record.Cells[at];
                }

                yield return new ExportRow(record.Line, Row(table, record.Line, cells, isCsv: true));
            }
        }
    }

    /// <summary>For each cell of the header the column it names; null when they are not the table's.</summary>
    private int[]? Places(ExportTable table, IReadOnlyList<string> header)
    {
        string[] known = [.. table.Columns.Select(column => column.Name)];
        int[] places = [.. header.Select(name => Array.IndexOf(known, name))];
        for (int at = 0; at < places.Length; at++)
        {
            if (places[at] < 0)
            {
                Unknown(table, 1, header[at], known);
            }
        }

        foreach (string missing in known.Where(name => !header.Contains(name, StringComparer.Ordinal)))
        {
            problems.Add(table.File, 1, missing, "this column is missing");
        }

        foreach (IGrouping<string, string> twice in header.GroupBy(name => name).Where(same => same.Count() > 1))
        {
            problems.Add(table.File, 1, twice.Key, "this column stands there twice");
        }

        return places.Contains(-1) || places.Distinct().Count() != known.Length || places.Length != known.Length ? null : places;
    }

    private IEnumerable<ExportRow> Json(ExportTable table, TextReader text)
    {
        string[] known = [.. table.Columns.Select(column => column.Name)];
        long line = 0;
        while (text.ReadLine() is { } json)
        {
            line++;
            yield return new ExportRow(line, JsonRow(table, line, json, known));
        }
    }

    private object?[]? JsonRow(ExportTable table, long line, string json, string[] known)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, s_strict);
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                problems.Add(table.File, line, "", "each line is one JSON object");
                return null;
            }

            string?[] cells = new string?[known.Length];
            bool right = true;
            foreach (JsonProperty property in document.RootElement.EnumerateObject())
            {
                int at = Array.IndexOf(known, property.Name);
                if (at < 0)
                {
                    Unknown(table, line, property.Name, known);
                    right = false;
                }
                else if (IsOf(table.Columns[at].Kind, property.Value.ValueKind))
                {
                    cells[at] = property.Value.ValueKind == JsonValueKind.String ? property.Value.GetString() : property.Value.GetRawText();
                }
                else
                {
                    problems.Add(
                        table.File,
                        line,
                        property.Name,
                        "this is another kind of value",
                        property.Value.GetRawText(),
                        ExportCells.Allowed(table.Columns[at])
                    );
                    (cells[at], right) = (null, false);
                }
            }

            return right ? Row(table, line, cells, isCsv: false) : null;
        }
        catch (JsonException wrong)
        {
            problems.Add(table.File, line, "", "this is no JSON: " + wrong.Message.Split(" LineNumber")[0].Split(" Path:")[0].Trim());
            return null;
        }
    }

    private object?[]? Row(ExportTable table, long line, string?[] cells, bool isCsv)
    {
        object?[] row = new object?[cells.Length];
        bool right = true;
        for (int at = 0; at < cells.Length; at++)
        {
            ExportColumn column = table.Columns[at];
            string? cell = isCsv && column.Kind == ExportKind.Text ? ExportCells.Unguard(cells[at] ?? "") : cells[at];
            if (!ExportCells.TryRead(column, cell, out row[at], out string allowed))
            {
                problems.Add(
                    table.File,
                    line,
                    column.Name,
                    string.IsNullOrEmpty(cell) ? "this is missing" : "this cannot be read",
                    cell,
                    allowed
                );
                right = false;
            }
        }

        return right && WithDocument(table, line, row) ? row : null;
    }

    /// <summary>Puts the document in the place of its name.</summary>
    private bool WithDocument(ExportTable table, long line, object?[] row)
    {
        if (ExportLines.DocumentOf(table, row) is not { } name)
        {
            return true;
        }

        int at = table.PlaceOf("document");
        if ((string?)row[at] != name)
        {
            problems.Add(table.File, line, "document", "the document of this line has another name", (string?)row[at], name);
            return false;
        }

        row[at] = Text(name);
        if (row[at] is not string text)
        {
            return false;
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            return true;
        }
        catch (JsonException wrong)
        {
            problems.Add(name, (wrong.LineNumber ?? -1) + 1, "", "this is no JSON: " + wrong.Message.Split(" LineNumber")[0].Trim());
            return false;
        }
    }

    private void Unknown(ExportTable table, long line, string name, string[] known)
    {
        string near = string.Join(", ", NearNames.Find(name, known, 1));
        problems.Add(table.File, line, name, "this is no field of " + table.File, null, near.Length > 0 ? near : string.Join(", ", known));
    }

    private static bool IsOf(ExportKind kind, JsonValueKind value) =>
        kind switch
        {
            ExportKind.Number or ExportKind.Count => value == JsonValueKind.Number,
            ExportKind.Flag => value is JsonValueKind.True or JsonValueKind.False,
            ExportKind.Json => value == JsonValueKind.Object,
            _ => value == JsonValueKind.String,
        };
}
