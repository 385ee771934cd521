using System.Text;
using System.Text.Json;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>A row of an export with the line it begins on.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Row">Its values in the order of the columns; null when some cannot be read.</param>
public sealed record ExportRow(long Line, object?[]? Row);

/// <summary>Reads the files of an export, row by row.</summary>
/// <param name="folder">The folder.</param>
/// <param name="problems">Takes what is wrong.</param>
public sealed partial class ExportReader(string folder, ImportProblems problems)
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
}
