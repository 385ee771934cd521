using System.Text.Json;
using Coilwright.Physics;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>Reads the files of an export: their lines as cells.</summary>
public sealed partial class ExportReader
{
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
