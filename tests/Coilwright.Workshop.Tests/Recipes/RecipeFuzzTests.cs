using System.Text.Json.Nodes;
using Coilwright.Formats.Circuits;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>Random damage to valid documents: reading never throws, and gives either the value or problems.</summary>
public class RecipeFuzzTests
{
    private static readonly string[] s_recipes = [.. DemoFiles.Recipes().Select(row => DemoFiles.Recipe(row.Data))];

    private static readonly string?[] s_values =
    [
        null,
        "null",
        "true",
        "0",
        "-1",
        "1e400",
        "7",
        "\"\"",
        "\"5\"",
        "\"-5 mm\"",
        "\"1e9 m\"",
        "\"0 mm\"",
        "\"1,234 mm\"",
        "\"NaN\"",
        "[]",
        "{}",
        "[[]]",
        "[null]",
        "[1,2,3]",
        "\"7k43\"",
        "\"lone half\"",
        "{\"a\":{\"a\":1}}",
        "[\"1 mm\",\"2 mm\",\"3 mm\"]",
        "36",
        "100000",
    ];

    [Fact]
    public void Text_damaged_anywhere_never_makes_it_throw()
    {
        Gen<string> piece = Gen.OneOf(
            Gen.String[0, 3],
            Gen.Char["{}[]\",:0123456789.-eE \\"].Array[0, 4].Select(chars => new string(chars))
        );
        Gen.Select(Gen.Int[0, s_recipes.Length - 1], Gen.Double[0, 1], Gen.Int[0, 30], piece)
            .ForAll(
                (which, at, cut, insert) =>
                {
                    string json = s_recipes[which];
                    int start = (int)(at * (json.Length - 1));
                    Holds(json[..start] + insert + json[Math.Min(json.Length, start + cut)..]);
                },
                count: 3000
            );
    }

    [Fact]
    public void Values_replaced_removed_or_moved_never_make_it_throw() =>
        Gen.Select(Gen.Int[0, s_recipes.Length - 1], Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, s_values.Length - 1]).Array[1, 6])
            .ForAll(
                (which, changes) =>
                {
                    JsonNode root = JsonNode.Parse(s_recipes[which])!;
                    foreach ((int place, int value) in changes)
                    {
                        Change(root, place, s_values[value]);
                    }

                    Holds(root.ToJsonString().Replace("lone half", "\\ud800", StringComparison.Ordinal));
                },
                count: 3000
            );

    private static void Holds(string json)
    {
        ReadOutcome<Recipe> recipe = RecipeReader.Read(json);
        Assert.True(recipe.Value is null != (recipe.Problems.Count == 0), "either a value or problems");
        ReadOutcome<LoadCircuit> load = LoadReader.Read(json);
        Assert.True(load.Value is null != (load.Problems.Count == 0), "either a value or problems");
        ReadOutcome<LumpedPickup> lumped = LumpedReader.Read(json);
        Assert.True(lumped.Value is null != (lumped.Problems.Count == 0), "either a value or problems");
    }

    private static void Change(JsonNode root, int place, string? value)
    {
        List<JsonNode> nodes = [];
        Gather(root, nodes);
        JsonNode node = nodes[place % nodes.Count];
        if (node.Parent is JsonObject parent)
        {
            string name = node.GetPropertyName();
            parent.Remove(name);
            if (value is not null)
            {
                parent[name] = JsonNode.Parse(value);
            }
        }
        else if (node.Parent is JsonArray list)
        {
            int index = node.GetElementIndex();
            list.RemoveAt(index);
            if (value is not null)
            {
                list.Insert(index, JsonNode.Parse(value));
            }
        }
    }

    private static void Gather(JsonNode? node, List<JsonNode> nodes)
    {
        if (node is null)
        {
            return;
        }

        nodes.Add(node);
        IEnumerable<JsonNode?> inner = node switch
        {
            JsonObject fields => fields.Select(field => field.Value),
            JsonArray list => list,
            _ => [],
        };
        foreach (JsonNode? child in inner)
        {
            Gather(child, nodes);
        }
    }
}
