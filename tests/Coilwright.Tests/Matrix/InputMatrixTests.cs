using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coilwright.Analysis.Forecasts;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Tests.Matrix;

/// <summary>Every input of a recipe and of a load, moved one at a time: what depends on it moves, what does not stands still.</summary>
public sealed partial class InputMatrixTests
{
    private const string Page = "docs/inputs.md";

    /// <summary>What a prediction does not hear.</summary>
    private static readonly string[] s_apart =
    [
        "format",
        "name",
        "notes",
        "tags",
        "targets",
        "potting.temperature",
        "potting.limit",
        "potting.time",
        "coils[].name",
        "magnets[].shape",
        "metalwork[].shape",
    ];

    [Fact]
    public void Each_input_moves_what_depends_on_it_and_nothing_else()
    {
        Dictionary<string, JsonNode> recipes = new(StringComparer.Ordinal)
        {
            ["single"] = Recipe("single"),
            ["blade"] = Recipe("blade"),
            ["twin"] = Recipe("twin"),
            ["covered"] = Recipe("covered"),
        };
        JsonNode load = JsonNode.Parse(File.ReadAllText(RepositoryFiles.PathOf("demo", "loads", "player.json")))!;
        Dictionary<string, JsonNode> before = recipes.ToDictionary(
            pair => pair.Key,
            pair => Predict(pair.Value, load),
            StringComparer.Ordinal
        );
        List<string> wrong = [];
        foreach (MatrixRow row in MatrixRow.Read())
        {
            JsonNode recipe = recipes[row.Base].DeepClone(),
                its = load.DeepClone();
            bool onLoad = row.Path.StartsWith("load:", StringComparison.Ordinal);
            JsonPath.Set(onLoad ? its : recipe, onLoad ? row.Path[5..] : row.Path, JsonNode.Parse(row.Value));
            Prepare(recipe, row.Path);
            IReadOnlySet<string> moved = MatrixOutputs.Moved(before[row.Base], Predict(recipe, its));
            wrong.AddRange(row.Moves.Except(moved).Select(name => $"{row.Base} {row.Path} = {row.Value}: {name} does not hear it"));
            wrong.AddRange(moved.Except(row.Moves).Select(name => $"{row.Base} {row.Path} = {row.Value}: {name} moves without a reason"));
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        string written = RepositoryFiles.PathOf("artifacts", "input-matrix.md");
        Directory.CreateDirectory(Path.GetDirectoryName(written)!);
        File.WriteAllText(written, Table());
    }

    [Fact]
    public void Every_field_that_a_recipe_may_have_is_in_the_matrix()
    {
        JsonNode schema = JsonNode.Parse(File.ReadAllText(RepositoryFiles.PathOf("schemas", "recipe.json")))!;
        HashSet<string> known = MatrixRow.Read().Select(row => Index().Replace(row.Path, "[]")).ToHashSet(StringComparer.Ordinal);
        string[] missing =
        [
            .. Fields(schema, schema, "")
                .Where(path =>
                    !IsApart(path)
                    && !known.Contains(path)
                    && !known.Contains(path.Replace("[]", "", StringComparison.Ordinal))
                    && !known.Any(row => row + "[]" == path)
                ),
        ];
        Assert.Empty(missing);
    }

    /// <summary>The table of docs/inputs.md is what the checks above hold; artifacts/input-matrix.md is a fresh one to copy.</summary>
    [Fact]
    public void The_printed_matrix_is_the_tested_one() =>
        Assert.Equal(Table(), File.ReadAllText(RepositoryFiles.PathOf(Page.Split('/'))).ReplaceLineEndings("\n"));

    private static bool IsApart(string path) =>
        // steps after winding move no number of the forecast
        s_apart.Contains(path) || path.Split('.').Any(part => part is "notes" or "tags" or "targets" or "steps[]");

    /// <summary>Fields that take the place of others in the same part.</summary>
    private static void Prepare(JsonNode recipe, string path)
    {
        JsonNode? part = JsonPath.Find(recipe, path[..Math.Max(0, path.LastIndexOf('.'))]);
        foreach (
            string replaced in path.Split('.')[^1] switch
            {
                "positions" => (string[])["count", "spacing"],
                "tops" => ["top"],
                "shape" => ["headDiameter", "headHeight"],
                _ => [],
            }
        )
        {
            part?.AsObject().Remove(replaced);
        }

        if (path == "strings.count")
        {
            recipe["strings"]!["gauges"]!.AsArray().Add(new JsonObject { ["core"] = "0.45 mm" });
        }
    }

    private static JsonNode Recipe(string name) =>
        JsonNode.Parse(File.ReadAllText(RepositoryFiles.PathOf("tests", "Coilwright.Tests", "Matrix", name + ".json")))!;

    private static JsonNode Predict(JsonNode recipe, JsonNode load)
    {
        ReadOutcome<Recipe> read = RecipeReader.Read(recipe.ToJsonString());
        Assert.True(
            read.Value is not null && read.Problems.Count == 0,
            string.Join("; ", read.Problems.Select(problem => problem.Field + ": " + problem.Message))
        );
        LoadCircuit circuit = LoadReader.Read(load.ToJsonString()).Value!;
        return JsonNode.Parse(
            PredictionJson.Write(
                Forecaster.Predict(RecipeModelBuilder.ToModel(read.Value), circuit, cancel: TestContext.Current.CancellationToken)
            )
        )!;
    }

    private static IEnumerable<string> Fields(JsonNode root, JsonNode node, string path)
    {
        JsonNode at =
            node["$ref"]?.GetValue<string>() is { } reference && reference.StartsWith("#/", StringComparison.Ordinal)
                ? reference[2..].Split('/').Aggregate(root, (inner, key) => inner[key]!)
                : node;
        if (at["properties"] is JsonObject properties)
        {
            return properties.SelectMany(field => Fields(root, field.Value!, path.Length == 0 ? field.Key : path + "." + field.Key));
        }

        return at["items"] is { } items ? Fields(root, items, path + "[]") : [path];
    }

    private static string Table()
    {
        StringBuilder page = new(
            "# What each input moves\n\nEach field of a recipe or a load is changed alone in a test (`tests/Coilwright.Tests/Matrix`). "
                + "● moves, a blank stands still to seven digits: both are held.\n"
        );
        page.Append(
            "A bobbin's material, its wall and its metal move the capacitance where they stand at another voltage than the turns beside "
                + "them: not about rods that float. Speed and scale length move no number of a prediction.\n\n"
        );
        page.Append("| Input | on | ")
            .AppendJoin(" | ", MatrixOutputs.Columns.Select((_, i) => i + 1))
            .Append(" |\n|---|---|")
            .Insert(page.Length, "---|", MatrixOutputs.Columns.Count)
            .Append('\n');
        foreach (MatrixRow row in MatrixRow.Read())
        {
            page.Append("| `")
                .Append(row.Path.Replace("load:", "load: ", StringComparison.Ordinal))
                .Append("` | ")
                .Append(row.Base)
                .Append(" | ")
                .AppendJoin(" | ", MatrixOutputs.Columns.Select(column => row.Moves.Contains(column.Name) ? "●" : ""))
                .Append(" |\n");
        }

        page.Append("\nColumns:\n\n");
        for (int i = 0; i < MatrixOutputs.Columns.Count; i++)
        {
            page.Append(CultureInfo.InvariantCulture, $"{i + 1}. {MatrixOutputs.Columns[i].Words}\n");
        }

        return page.ToString();
    }

    [GeneratedRegex(@"\[\d+\]")]
    private static partial Regex Index();
}
