#pragma warning disable CA5394 // a drawn shop, not a secret
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Workshop.Exports;

namespace Coilwright.Application.Tests.Exports;

/// <summary>
/// Records of every kind drawn from a seed: texts with odd characters, corrections of
/// corrections and undone readings, events that take others
/// back, sets, returns, customers with and without a name, numbers of any size.
/// </summary>
internal sealed class DrawnShop(int seed)
{
    private static readonly string[] s_texts =
    [
        "",
        "Mara",
        "7,43 kΩ",
        "\"quoted\", with a comma",
        "two\nlines",
        "old\r\nline ends\r",
        " room around ",
        "=1+2",
        "'apostrophe",
        "''",
        "-5",
        "+6.2k",
        "@name",
        "\ttab",
        "\u00B5 \u2212 \u03A9 \u4E2D\u6587 \U0001F3B8",
        "\uFEFFmark",
        "\\back \u0001 \u007F",
        "<b>&amp;</b>",
        "e\u0301",
        "null",
        ";",
        "{\"a\": 1}",
    ];

    private static readonly JsonSerializerOptions s_json = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly Random _random = new(seed);
    private readonly Dictionary<string, List<object?[]>> _rows = [];

    /// <summary>The rows of each table.</summary>
    public IReadOnlyDictionary<string, List<object?[]>> Rows
    {
        get
        {
            if (_rows.Count == 0)
            {
                foreach (ExportTable table in ExportTables.All)
                {
                    Draw(table);
                }
            }

            return _rows;
        }
    }

    private void Draw(ExportTable table)
    {
        List<object?[]> rows = _rows[table.File] = [];
        int count = _random.Next(1, table.File == "readings.csv" ? 80 : 14);
        for (int n = 0; n < count; n++)
        {
            object?[] row = [.. table.Columns.Select(column => Value(column, n))];
            foreach (ExportLink link in table.Links)
            {
                Link(table, row, link);
            }

            foreach (ExportKey key in table.Keys.Where(key => key.IgnoresCase))
            {
                row[table.PlaceOf(key.Columns[0])] = Text() + FormattableString.Invariant($"#{n}");
            }

            Fit(table, row, n);
            rows.Add(row);
        }

        if (table.Order.Count > 0)
        {
            return; // the store orders them
        }

        Assert.NotEmpty(rows);
    }

    /// <summary>What a kind of record asks of its fields.</summary>
    private void Fit(ExportTable table, object?[] row, int n)
    {
        void Set(string column, object? value) => row[table.PlaceOf(column)] = value;
        switch (table.File)
        {
            case "revisions.csv":
                Set("number", (long)n + 1);
                break;
            case "learning.csv":
                Set("number", (long)n + 1);
                break;
            case "readings.csv":
                bool corrects = row[table.PlaceOf("supersedes")] is not null;
                Set("withdraws", corrects && _random.Next(2) == 0);
                break;
            case "batch-limits.jsonl":
                Set("at [Hz]", n * 0.1);
                Set("limits", JsonSerializer.Serialize(new { nominal = Number(), text = Text() }, s_json));
                break;
            case "batch-events.jsonl":
                bool undoes = row[table.PlaceOf("undoes")] is not null;
                Set("kind", undoes ? "Undone" : "CauseFound");
                Set("spool", "");
                Set("says", undoes ? "{}" : JsonSerializer.Serialize(new { cause = "none", note = Text() }, s_json));
                break;
            case "piece-events.jsonl":
                Piece(table, row);
                break;
        }
    }

    private void Piece(ExportTable table, object?[] row)
    {
        void Set(string column, object? value) => row[table.PlaceOf(column)] = value;
        List<object?[]> above = _rows[table.File];
        object? customer = row[table.PlaceOf("customer")] ?? Pick("customers.csv")[0];
        Set("customer", null);
        Set("basket", null);
        Set("mix", null);
        Set("about", null);
        (string kind, object says) = _random.Next(6) switch
        {
            0 => ("Noted", new { text = Text() }),
            1 => ("Reserved", new { keptFor = customer }),
            2 => ("Shipped", new { }),
            3 => ("Returned", new { complaint = Text() }),
            4 => (
                "JoinedSet",
                (object)
                    new
                    {
                        name = Text(),
                        place = Text(),
                        offsetDb = Number(),
                        why = Text(),
                    }
            ),
            _ => ("Undone", new { reason = Text() }),
        };
        if (kind == "Undone" && above.Count == 0)
        {
            (kind, says) = ("Noted", new { text = Text() });
        }

        Set("kind", kind);
        Set("says", JsonSerializer.Serialize(says, s_json));
        if (kind == "Shipped")
        {
            Set("customer", customer);
        }
        else if (kind is "Undone" or "JoinedSet")
        {
            Set("about", kind == "Undone" ? above[_random.Next(above.Count)][0] : Id());
        }
    }

    private void Link(ExportTable table, object?[] row, ExportLink link)
    {
        bool isOptional = table.Columns[table.PlaceOf(link.Columns[0])].IsOptional;
        ExportTable to = ExportTables.All.Single(one => one.File == link.File);
        object?[]? named = null;
        if (!isOptional || (_rows[link.File].Count > 0 && _random.Next(3) == 0))
        {
            named = Pick(link.File);
            ExportKey? single = table.Keys.FirstOrDefault(key => key.Columns.SequenceEqual(link.Columns));
            if (single is not null && _rows[table.File].Any(other => Equals(other[table.PlaceOf(link.Columns[0])], named[0])))
            {
                named = null; // superseded or undone already
            }
        }

        for (int at = 0; at < link.Columns.Count; at++)
        {
            row[table.PlaceOf(link.Columns[at])] = named?[to.PlaceOf(to.Keys[0].Columns[at])];
        }
    }

    private object?[] Pick(string file) => _rows[file][_random.Next(_rows[file].Count)];

    private object? Value(ExportColumn column, int n) =>
        column.IsOptional && _random.Next(3) == 0
            ? null
            : column.Kind switch
            {
                ExportKind.Id => Id(),
                ExportKind.Number => Number(),
                ExportKind.Count => (long)_random.Next(1, 100),
                ExportKind.Flag => _random.Next(2) == 0,
                ExportKind.Time => new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero).AddTicks(_random.NextInt64(1L << 50)),
                ExportKind.Word => column.Words[_random.Next(column.Words.Count)],
                ExportKind.Document => JsonSerializer.Serialize(new { name = Text(), n }, s_json) + (_random.Next(2) == 0 ? "\r\n" : ""),
                ExportKind.Json => "{}",
                _ => Text(),
            };

    private Guid Id()
    {
        byte[] bytes = new byte[16];
        _random.NextBytes(bytes);
        return new Guid(bytes);
    }

    private string Text() => s_texts[_random.Next(s_texts.Length)];

    private double Number() =>
        _random.Next(5) switch
        {
            0 => 0,
            1 => _random.Next(-5000, 5000),
            2 => _random.NextDouble(),
            3 => -_random.NextDouble() * 1e-12,
            _ => 1e300 * _random.NextDouble(),
        };
}
