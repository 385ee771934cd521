using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Formats.Csv;
using Coilwright.Formats.Exports;
using Coilwright.Workshop.Exports;

namespace Coilwright.Tests.Commands;

/// <summary>An exported shop is what its schemas say, file by file and field by field.</summary>
public sealed class ExportSchemaTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_demo_shop_is_exported_as_the_schemas_say()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db"),
            export = folder.PathOf("export");
        Assert.Equal(0, (await CommandRun.Of("demo", "--no-serve", "--shop", shop)).Exit);
        Assert.Equal(0, (await CommandRun.Of("export", export, "--shop", shop)).Exit);
        Assert.Empty(Schemas.Complaints("export.json", await File.ReadAllTextAsync(Path.Combine(export, ManifestFile.Name), Cancel)));

        JsonObject all = [];
        foreach (ExportTable table in ExportTables.All)
        {
            string text = await File.ReadAllTextAsync(Path.Combine(export, table.File), Cancel);
            all[table.File] = new JsonArray([.. ExportLines.IsCsv(table) ? Csv(table, text) : Lines(text)]);
        }

        Assert.Empty(Schemas.Complaints("export-records.json", all.ToJsonString()));
        Assert.True(all.Count(file => file.Value!.AsArray().Count > 0) >= 15, "the demo shop has records of most kinds");
        string[] recipes = Directory.GetFiles(Path.Combine(export, "recipes"));
        Assert.NotEmpty(recipes);
        foreach (string recipe in recipes)
        {
            Assert.Empty(Schemas.Complaints("recipe.json", await File.ReadAllTextAsync(recipe, Cancel)));
        }
    }

    [Fact]
    public void Schemas_have_every_field_and_no_other()
    {
        JsonNode schema = JsonNode.Parse(File.ReadAllText(RepositoryFiles.PathOf("schemas/export-records.json")))!;
        JsonObject files = schema["properties"]!.AsObject();
        Assert.Equal(ExportTables.All.Select(table => table.File), files.Select(file => file.Key));
        foreach (ExportTable table in ExportTables.All)
        {
            JsonNode line = files[table.File]!["items"]!;
            Assert.Equal(table.Columns.Select(column => column.Name), line["properties"]!.AsObject().Select(field => field.Key));
            Assert.Equal(
                table.Columns.Where(column => !column.IsOptional).Select(column => column.Name),
                line["required"]!.AsArray().Select(name => name!.GetValue<string>())
            );
        }
    }

    private static IEnumerable<JsonNode?> Lines(string text) =>
        text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonNode.Parse(line));

    /// <summary>Read by the other reader of tables, not by the one that an import uses.</summary>
    private static IEnumerable<JsonNode?> Csv(ExportTable table, string text)
    {
        (int Line, string[] Cells)[] rows = [.. CsvCells.Rows(text)];
        Assert.Equal(table.Columns.Select(column => column.Name), rows[0].Cells);
        foreach ((_, string[] cells) in rows.Skip(1))
        {
            JsonObject row = [];
            for (int at = 0; at < cells.Length; at++)
            {
                if (cells[at].Length > 0 || !table.Columns[at].IsOptional)
                {
                    row[cells.Length == table.Columns.Count ? table.Columns[at].Name : "?"] = Value(table.Columns[at].Kind, cells[at]);
                }
            }

            yield return row;
        }
    }

    private static JsonNode? Value(ExportKind kind, string cell) =>
        kind switch
        {
            ExportKind.Number => double.Parse(cell, CultureInfo.InvariantCulture),
            ExportKind.Count => long.Parse(cell, CultureInfo.InvariantCulture),
            ExportKind.Flag => bool.Parse(cell),
            _ => cell,
        };
}
