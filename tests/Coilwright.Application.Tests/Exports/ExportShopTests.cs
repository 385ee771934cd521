#pragma warning disable CA2100 // every statement below is a constant of the tests
using System.Security.Cryptography;
using System.Text;
using Coilwright.Application.Exports;
using Coilwright.Application.Shops;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Exports;
using Microsoft.Data.Sqlite;

namespace Coilwright.Application.Tests.Exports;

/// <summary>What a shop holds is written whole, alike for equal shops, and read back into an equal shop; all of it or nothing.</summary>
public sealed class ExportShopTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("coilwright-export-");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task The_demo_shop_exported_and_imported_and_exported_again_is_the_same_byte_for_byte()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        await shop.Opened.Services.Summaries.CatchUpAsync(int.MaxValue, Cancel);
        string first = PathOf("first"),
            again = PathOf("again"),
            second = PathOf("second"),
            other = PathOf("other.db");
        await SuccessAsync("export", first, "--shop", shop.File);
        await SuccessAsync("export", again, "--shop", shop.File);
        Assert.Equal(Contents(first), Contents(again));

        string would = await SuccessAsync("import", first, "--dry-run", "--shop", other);
        Assert.Contains("Nothing was written", would, StringComparison.Ordinal);
        Assert.False(File.Exists(other));
        string did = await SuccessAsync("import", first, "--shop", other);
        Assert.DoesNotContain("Note:", did, StringComparison.Ordinal);
        await SuccessAsync("export", second, "--shop", other);
        Assert.Equal(Contents(first), Contents(second));

        string sound = await SuccessAsync("verify", "--shop", other);
        Assert.DoesNotContain("no summary yet", sound, StringComparison.Ordinal);
        await using OpenedShop opened = await OpenedShop.OpenAsync(other, TimeProvider.System, Cancel);
        IReadOnlyDictionary<Guid, BatchSummary> before = await shop.Opened.Records.Summaries.AllAsync(Cancel),
            after = await opened.Records.Summaries.AllAsync(Cancel);
        Assert.NotEmpty(before);
        Assert.Equal(before.Keys.Order(), after.Keys.Order());
        Assert.All(before, one => Assert.Equivalent(one.Value, after[one.Key], strict: true));
        Assert.Equal(
            (await shop.Opened.Records.Pieces.InShopAsync(Cancel)).Select(piece => piece.Serial),
            (await opened.Records.Pieces.InShopAsync(Cancel)).Select(piece => piece.Serial)
        );
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public async Task A_drawn_shop_comes_back_the_same_byte_for_byte_and_value_by_value(int seed)
    {
        DrawnShop drawn = new(seed);
        string file = PathOf("drawn.db"),
            other = PathOf("other.db");
        await FillAsync(file, drawn);
        await SuccessAsync("export", PathOf("first"), "--shop", file);
        await SuccessAsync("import", PathOf("first"), "--shop", other);
        await SuccessAsync("export", PathOf("second"), "--shop", other);
        Assert.Equal(Contents(PathOf("first")), Contents(PathOf("second")));
        foreach (ExportTable table in ExportTables.All)
        {
            string columns = string.Join(", ", table.Columns.Select(column => $"\"{column.Property}\"")),
                order = table.Order.Count > 0 ? string.Join(", ", table.Order) : "EntryOrder",
                rows = $"SELECT {columns} FROM \"{table.Records}\" ORDER BY {order}";
            IReadOnlyList<string> kept = await RowsAsync(file, rows);
            Assert.Equal(drawn.Rows[table.File].Count, kept.Count);
            Assert.Equal(kept, await RowsAsync(other, rows));
        }

        string listed = "SELECT PieceId FROM OpenPieces ORDER BY PieceId";
        Assert.Equal(await RowsAsync(file, listed), await RowsAsync(other, listed));
        Assert.True((await RowsAsync(file, "SELECT Id FROM Readings WHERE Supersedes IS NOT NULL")).Count > 0 || seed != 1);
    }

    [Fact]
    public async Task Every_column_of_a_shop_is_exported_but_for_what_follows_from_others_and_who_may_sign_in()
    {
        string file = PathOf("columns.db");
        await using (await OpenedShop.CreateAsync(file, "Quay", TimeProvider.System, Cancel)) { }

        IReadOnlyList<string> columns = await RowsAsync(
            file,
            """
            SELECT m.name || '.' || c.name FROM sqlite_master m JOIN pragma_table_info(m.name) c
            WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite%' AND m.name NOT LIKE '\_\_EF%' ESCAPE '\'
              AND c.name <> 'EntryOrder' AND m.name <> 'Shop'
            """
        );
        IEnumerable<string> exported = ExportTables.All.SelectMany(table =>
            table.Columns.Select(column => $"{table.Records}.{column.Property}")
        );
        Assert.Equal(
            columns
                .Where(column => !ExportTables.Derived.Concat(ExportTables.Staying).Contains(column.Split('.')[0]))
                .Order(StringComparer.Ordinal),
            exported.Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            ["Shop.CreatedUtc", "Shop.Id", "Shop.Name"],
            await RowsAsync(file, "SELECT 'Shop.' || name FROM pragma_table_info('Shop') ORDER BY name")
        );
    }

    [Fact]
    public async Task Every_problem_is_named_with_file_line_and_field_and_nothing_is_written()
    {
        await FillAsync(PathOf("drawn.db"), new DrawnShop(3));
        string folder = PathOf("export"),
            shop = PathOf("other.db");
        await SuccessAsync("export", folder, "--shop", PathOf("drawn.db"));
        Append(folder, "room-temperatures.csv", "warm,x,Mara,yesterday\n1\n");
        Append(folder, "spools.csv", "\"never closed\n");
        Append(folder, "customers.csv", "3f2504e0-4f89-41d3-9a0c-0305e82c3301,K-1,,2026-03-02T12:00:00.0000000Z,\n");
        Append(folder, "customers.csv", "3f2504e0-4f89-41d3-9a0c-0305e82c3301,k-1,,2026-03-02T12:00:00.0000000Z,\n");
        Append(
            folder,
            "piece-readings.csv",
            "3f2504e0-4f89-41d3-9a0c-0305e82c3301,3f2504e0-4f89-41d3-9a0c-0305e82c3302,3f2504e0-4f89-41d3-9a0c-0305e82c3301,q,1,,,,,,,"
                + "2026-03-02T12:00:00.0000000Z\n"
        );
        Append(folder, "batch-events.jsonl", "{\"id\":1,\"kinds\":\"x\"}\nno JSON\n");
        File.Delete(Path.Combine(folder, "rules.csv"));
        string head = Path.Combine(folder, "machines.csv");
        await File.WriteAllTextAsync(
            head,
            (await File.ReadAllTextAsync(head, Cancel)).Replace("person", "persn", StringComparison.Ordinal),
            Cancel
        );

        (int exit, _, string error) = await DemoShop.RunAsync("import", folder, "--shop", shop);
        Assert.Equal(2, exit);
        Assert.False(File.Exists(shop));
        Assert.All(
            [
                ", temperature [°C]: this cannot be read; understood: warm; allowed: a number with a point",
                ", time: this cannot be read; understood: yesterday",
                ": the line has not as many cells as the header; understood: 1; allowed: 4",
                ": a quote is opened here and never closed",
                ", id: a line above has this already",
                ", reference: a line above has this already; understood: k-1",
                ", piece: no line of pieces.csv has this; understood: 3f2504e0-4f89-41d3-9a0c-0305e82c3302",
                ", kinds: this is no field of batch-events.jsonl; allowed: kind",
                ", id: this is another kind of value",
                ": this is no JSON",
                "rules.csv: there is no such file in the export",
                "machines.csv line 1, persn: this is no field of machines.csv; allowed: person",
                "machines.csv line 1, person: this column is missing",
                "room-temperatures.csv: the file does not hold as many records as were written",
            ],
            said => Assert.Contains(said, error, StringComparison.Ordinal)
        );
        int line = (await File.ReadAllTextAsync(Path.Combine(folder, "room-temperatures.csv"), Cancel)).Split('\n').Length - 2;
        Assert.Contains(FormattableString.Invariant($"room-temperatures.csv line {line}, temperature"), error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("batch-events.jsonl", "\"kind\":\"CauseFound\"", "\"kind\":\"Imagined\"", "no event that this program knows")]
    [InlineData("manifest.json", "coilwright.export/1", "coilwright.export/9", "this is another format")]
    [InlineData("manifest.json", "\"readings.csv\"", "\"reading.csv\"", "this file is none of an export")]
    [InlineData("revisions.csv", "recipes/", "../recipes/", "the document of this line has another name")]
    public async Task What_is_no_export_of_ours_is_refused_whole(string file, string from, string to, string said)
    {
        await FillAsync(PathOf("drawn.db"), new DrawnShop(1));
        string folder = PathOf("export"),
            shop = PathOf("other.db"),
            path = Path.Combine(folder, file);
        await SuccessAsync("export", folder, "--shop", PathOf("drawn.db"));
        string text = await File.ReadAllTextAsync(path, Cancel);
        Assert.Contains(from, text, StringComparison.Ordinal);
        await File.WriteAllTextAsync(path, text.Replace(from, to, StringComparison.Ordinal), Cancel);
        (int exit, _, string error) = await DemoShop.RunAsync("import", folder, "--shop", shop);
        Assert.Equal(2, exit);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.False(File.Exists(shop));
    }

    [Fact]
    public async Task Neither_a_folder_with_files_nor_a_shop_with_records_is_written_into()
    {
        string file = PathOf("drawn.db"),
            folder = PathOf("export");
        await FillAsync(file, new DrawnShop(2));
        Directory.CreateDirectory(folder);
        await File.WriteAllTextAsync(Path.Combine(folder, "note.txt"), "mine", Cancel);
        (int exit, _, string error) = await DemoShop.RunAsync("export", folder, "--shop", file);
        Assert.Equal(2, exit);
        Assert.Contains("is not empty", error, StringComparison.Ordinal);
        Assert.Equal(["note.txt"], Directory.GetFileSystemEntries(folder).Select(Path.GetFileName));

        File.Delete(Path.Combine(folder, "note.txt"));
        await SuccessAsync("export", folder, "--shop", file); // an empty one is taken
        byte[] before = await HashAsync(file);
        (exit, _, error) = await DemoShop.RunAsync("import", folder, "--shop", file);
        Assert.Equal(2, exit);
        Assert.Contains("holds records already", error, StringComparison.Ordinal);
        Assert.Equal(before, await HashAsync(file));

        string empty = PathOf("empty.db");
        await using (await OpenedShop.CreateAsync(empty, "Another name", TimeProvider.System, Cancel)) { }

        await File.AppendAllTextAsync(Path.Combine(folder, "manifest.json"), "\n", Cancel); // as an editor leaves it
        await SuccessAsync("import", folder, "--shop", empty);
        Assert.Equal(["Drawn quay"], await RowsAsync(empty, "SELECT Name FROM Shop"));
    }

    [Fact]
    public async Task An_export_that_is_given_up_leaves_nothing_and_one_under_way_is_of_one_moment()
    {
        string file = PathOf("drawn.db"),
            folder = PathOf("export");
        await FillAsync(file, new DrawnShop(4));
        await using OpenedShop opened = await OpenedShop.OpenAsync(file, TimeProvider.System, Cancel);
        using CancellationTokenSource stop = new();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opened.Use<ExportShop>().RunAsync(folder, null, stop.Token));
        Assert.DoesNotContain(Directory.GetFileSystemEntries(_folder.FullName), name =>
            Path.GetFileName(name).StartsWith("export", StringComparison.Ordinal)
        );

        await using IShopSnapshot look = await opened.Records.Transfer.LookAsync(Cancel);
        ExportTable room = ExportTables.All.Single(table => table.Records == "RoomTemperatures");
        long before = await look.CountAsync(room, Cancel);
        Assert.Empty(await opened.Services.Winding.SetRoomTemperatureAsync("21 °C", "Mara", Cancel)); // nobody is kept from writing
        Assert.Equal(before, await look.CountAsync(room, Cancel));
    }

    private static async Task FillAsync(string file, DrawnShop drawn)
    {
        await using OpenedShop shop = await OpenedShop.CreateAsync(file, "to be renamed", TimeProvider.System, Cancel);
        await using IShopFilling filling = await shop.Records.Transfer.FillAsync(
            "Drawn quay",
            new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero),
            Cancel
        );
        foreach (ExportTable table in ExportTables.All)
        {
            await filling.AddAsync(table, drawn.Rows[table.File].ToAsyncEnumerable(), Cancel);
        }

        await filling.CommitAsync(Cancel);
    }

    private static async Task<string> SuccessAsync(params string[] words)
    {
        (int exit, string output, string error) = await DemoShop.RunAsync(words);
        Assert.True(exit == 0, $"{string.Join(' ', words)}: {exit}\n{output}{error}");
        return output;
    }

    private static void Append(string folder, string name, string text) => File.AppendAllText(Path.Combine(folder, name), text);

    /// <summary>Every file of a folder with its bytes, as one text.</summary>
    private static string Contents(string folder)
    {
        StringBuilder all = new();
        foreach (string path in Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            all.AppendLine(Path.GetRelativePath(folder, path)).AppendLine(Encoding.Latin1.GetString(File.ReadAllBytes(path)));
        }

        return all.ToString();
    }

    private static async Task<byte[]> HashAsync(string path)
    {
        await using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return await SHA256.HashDataAsync(file, Cancel);
    }

    private static async Task<IReadOnlyList<string>> RowsAsync(string file, string sql)
    {
        await using SqliteConnection connection = new($"Data Source={file};Pooling=False");
        await connection.OpenAsync(Cancel);
        await using SqliteCommand command = new(sql, connection);
        List<string> rows = [];
        await using SqliteDataReader reader = await command.ExecuteReaderAsync(Cancel);
        while (await reader.ReadAsync(Cancel))
        {
            object[] values = new object[reader.FieldCount];
            reader.GetValues(values);
            rows.Add(
                string.Join(" | ", values.Select(value => Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture)))
            );
        }

        return rows;
    }

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);
}
