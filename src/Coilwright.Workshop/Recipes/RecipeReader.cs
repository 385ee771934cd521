using System.Text.Json;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Recipes;

/// <summary>Reads a recipe as people write it (format coilwright.recipe/1) and tells every mistake at once.</summary>
public static class RecipeReader
{
    public const string Format = "coilwright.recipe/1";

    private static readonly string[] s_connections = ["series", "parallel", "single"];

    /// <summary>What a pickup may be potted in.</summary>
    internal static IReadOnlyList<string> PottingKinds { get; } = ["none", "wax", "paraffin", "beeswax", "lacquer", "epoxy"];

    /// <summary>The recipe, or every problem with its field path, what was understood and what is allowed.</summary>
    public static ReadOutcome<Recipe> Read(string json) => JsonDocumentReader.Read(json, Format, fields => Whole(fields, json));

    /// <summary>As <see cref="Read"/>, of a file that was handed in: the point alone is decimal there.</summary>
    public static ReadOutcome<Recipe> ReadFile(string json) =>
        JsonDocumentReader.Read(json, Format, fields => Whole(fields, json), pointOnly: true);

    private static Recipe Whole(JsonFields fields, string json)
    {
        Recipe recipe = new()
        {
            Name = fields.Text("name", "Harbour bridge"),
            Strings = fields.Object("strings", StringsReader.Read),
            Coils = fields.Objects("coils", CoilReader.Read, 12, "[ { … } ]"),
            Magnets = fields.Objects("magnets", PartsReader.Magnet, 24),
            Metalwork = fields.Objects("metalwork", PartsReader.Metalwork, 24),
            Connection = Joined(fields),
            Potting = fields.Object("potting", Potting),
            Leads = fields.Object("leads", LeadReader.Read),
            Steps = fields.Objects("steps", StepReader.Read, 20),
            Targets = fields.Object("targets", TargetReader.Read) ?? new Dictionary<string, Target>(),
            Notes = fields.Own("notes") is { ValueKind: JsonValueKind.String } notes ? notes.GetString()! : "",
            Tags = Tags(fields.Own("tags")),
            Json = json,
        };
        if (fields.Own("coils") is { ValueKind: JsonValueKind.Array } list && list.GetArrayLength() == 0)
        {
            fields.Problems.Add("coils", "a pickup has at least one coil", "[]", "1 to 12 coils");
        }

        StepReader.Check(recipe.Steps, ChargeRule.HasMagnets(recipe), fields.Problems);
        RecipeChecks.Check(recipe, fields.Problems);
        return recipe;
    }

    private static Connection Joined(JsonFields fields) =>
        fields.Word("connection", s_connections) switch
        {
            "single" => Connection.Single,
            "parallel" => Connection.Parallel,
            _ => Connection.Series,
        };

    private static RecipePotting Potting(JsonFields fields)
    {
        fields.Free("notes");
        return new RecipePotting(
            fields.Word("kind", PottingKinds, required: true) ?? "none",
            fields.Optional("temperature", Allowed.Temperature with { Example = "60 °C" }),
            fields.Optional("limit", Allowed.Temperature with { Example = "65 °C" }),
            fields.Optional("time", Allowed.Time)
        );
    }

    private static IReadOnlyList<string> Tags(JsonElement? tags) =>
        tags is { ValueKind: JsonValueKind.Array } list
            ? [.. list.EnumerateArray().Where(tag => tag.ValueKind == JsonValueKind.String).Select(tag => tag.GetString()!)]
            : [];
}
