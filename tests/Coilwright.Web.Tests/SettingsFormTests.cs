using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Rules;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Tests;

/// <summary>What the files of rules and winders can hold can be typed into their forms, and comes back as it was.</summary>
public sealed class SettingsFormTests
{
    private static readonly string s_root = RootOf(new DirectoryInfo(AppContext.BaseDirectory));

    /// <summary>Fields of a format that say what a document is, and those that are the shop's own.</summary>
    private static readonly string[] s_apart = ["format", "notes", "tags"];

    private static IEnumerable<SettingField> RuleFields =>
        RulesForm.Groups.SelectMany(group => group.Fields.Concat(group.Rows is { } rows ? Named(rows) : []));

    private static IEnumerable<SettingField> MachineFields =>
        MachineForm
            .Every.Concat(MachineForm.Counter)
            .Concat(MachineForm.ByKind.SelectMany(one => one.Fields))
            .Concat(Named(MachineForm.Cams))
            .Concat(Named(MachineForm.Tensions));

    [Fact] // instruments have a page of their own, where each is tried
    public void Every_rule_of_the_format_has_its_field() =>
        Assert.Equal(
            PathsOf("rules.json").Where(path => !path.StartsWith("instruments", StringComparison.Ordinal)).Order(StringComparer.Ordinal),
            RuleFields.Select(field => field.Path).Append(RulesForm.Needs).Distinct().Order(StringComparer.Ordinal)
        );

    [Fact] // the doubt of a counter's test is taken as usual: nobody at a winder has a figure for it
    public void Every_fact_of_a_winder_has_its_field() =>
        Assert.Equal(
            PathsOf("machine.json").Except(["counter.doubt"]).Order(StringComparer.Ordinal),
            MachineFields.Select(field => field.Path).Concat(["name", MachineForm.Kind]).Distinct().Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Rules_that_nobody_touches_come_back_as_they_were()
    {
        string json = File.ReadAllText(Path.Combine(s_root, "demo", "rules", "lantern-quay.json"));
        JsonNode before = JsonNode.Parse(json)!;
        Dictionary<string, StringValues> typed = FieldsOf(before, RulesForm.Groups.SelectMany(group => group.Fields));
        foreach (SettingRows rows in RulesForm.Groups.Select(group => group.Rows).OfType<SettingRows>())
        {
            AddRows(typed, before, rows);
        }

        typed[RulesForm.Needs] = new StringValues([.. RulesForm.NeedsOf(before)]);
        JsonObject after = RulesForm.Apply(json, new FormCollection(typed));
        (ShopRules expected, ShopRules actual) = (
            ShopRulesReader.Read(json).Value!,
            ShopRulesReader.Read(SettingsForm.Write(after)).Value!
        );
        Assert.Equal((65.0, 80.0), (actual.BathLimitC("abs"), actual.BathLimitC("vulcanised-fibre"))); // by label in the form
        Assert.Equal(JsonSerializer.Serialize(expected), JsonSerializer.Serialize(actual with { BathLimitsC = expected.BathLimitsC }));
        Assert.Equal($"{before["notes"]}", $"{after["notes"]}");
    }

    [Theory]
    [InlineData("gear-winder.json")]
    [InlineData("hand-winder.json")]
    [InlineData("stepper-winder.json")]
    [InlineData("timed-winder.json")]
    public void A_winder_that_is_typed_anew_is_the_winder_of_its_file(string file)
    {
        string json = File.ReadAllText(Path.Combine(s_root, "demo", "machines", file));
        JsonNode before = JsonNode.Parse(json)!;
        Dictionary<string, StringValues> typed = FieldsOf(
            before,
            MachineForm.Every.Concat(MachineForm.Counter).Concat(MachineForm.ByKind.SelectMany(one => one.Fields))
        );
        AddRows(typed, before, MachineForm.Tensions);
        AddRows(typed, before, MachineForm.Cams);
        typed["name"] = $"{before["name"]}";
        typed[MachineForm.Kind] = $"{before["kind"]}";
        JsonObject after = MachineForm.Apply(new() { ["format"] = MachineReader.Format }, new FormCollection(typed));
        (Machine expected, Machine actual) = (MachineReader.Read(json).Value!, MachineReader.Read(SettingsForm.Write(after)).Value!);
        Assert.Equal(JsonSerializer.Serialize(expected), JsonSerializer.Serialize(actual));
        Assert.Equal(JsonSerializer.Serialize<object?>(expected.Traverse), JsonSerializer.Serialize<object?>(actual.Traverse));
    }

    [Theory]
    [InlineData("ink.potLife", "10", "\"10 h\"")]
    [InlineData("ink.potLife", "0,5", "\"0.5 h\"")]
    [InlineData("ink.fullCure", "6 days", "\"6 days\"")]
    [InlineData("testTolerances.dcResistance", "2,5 %", "\"2.5 %\"")]
    [InlineData("gaussSpread", "8", "\"8 %\"")]
    [InlineData("gaussSpread", "many", "\"many\"")]
    [InlineData("speed.steps", "400; 800; 1200 rpm", "[\"400 rpm\",\"800 rpm\",\"1200 rpm\"]")]
    [InlineData("traverse.wheels", "19 20, 24", "[19,20,24]")]
    [InlineData("traverse.wheels", "19; x", "[19,\"x\"]")]
    [InlineData("spindles", "2", "2")]
    public void What_people_type_is_what_the_document_holds(string path, string typed, string json)
    {
        SettingField field = RuleFields.Concat(MachineFields).First(one => one.Path == path);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(json), field.NodeOf(typed)), field.NodeOf(typed)?.ToJsonString());
    }

    [Fact]
    public void A_winder_that_changes_its_kind_leaves_nothing_of_the_old_one_behind()
    {
        string json = File.ReadAllText(Path.Combine(s_root, "demo", "machines", "gear-winder.json"));
        JsonObject after = MachineForm.Apply(
            JsonNode.Parse(json)!.AsObject(),
            new FormCollection(
                new()
                {
                    ["name"] = "Winder 2",
                    [MachineForm.Kind] = "timed",
                    ["counter.turns"] = "100",
                    ["timed.timed.speedSpread"] = "9",
                }
            )
        );
        Assert.Empty(MachineReader.Read(SettingsForm.Write(after)).Problems);
        Assert.Equal(0.09, MachineReader.Read(SettingsForm.Write(after)).Value!.Timed!.SpeedSpread, 12);
        Assert.Null(after["traverse"]);
    }

    private static IEnumerable<SettingField> Named(SettingRows rows) =>
        rows.At(0).Select(field => field with { Path = field.Path.Replace("[0]", "[]", StringComparison.Ordinal) });

    private static Dictionary<string, StringValues> FieldsOf(JsonNode document, IEnumerable<SettingField> fields) =>
        fields.ToDictionary(field => field.Name, field => new StringValues(field.TextIn(document)), StringComparer.Ordinal);

    private static void AddRows(Dictionary<string, StringValues> typed, JsonNode document, SettingRows rows)
    {
        foreach (SettingField field in Enumerable.Range(0, rows.CountIn(document) + 1).SelectMany(rows.At))
        {
            typed[field.Name] = field.TextIn(document);
        }
    }

    /// <summary>Every field of a format that holds a value: "bathLimits[].limit"; a list of values by its own name.</summary>
    private static string[] PathsOf(string schema)
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(s_root, "schemas", schema)));
        JsonElement root = document.RootElement.Clone();
        return [.. Leaves(root, root, "").Where(path => !s_apart.Contains(path)).Distinct()];
    }

    private static IEnumerable<string> Leaves(JsonElement root, JsonElement node, string path)
    {
        if (node.TryGetProperty("$ref", out JsonElement to) && to.GetString()!.StartsWith('#'))
        {
            string[] steps = to.GetString()!.Split('/')[1..];
            return Leaves(root, steps.Aggregate(root, (at, step) => at.GetProperty(step)), path);
        }

        foreach (string choice in new[] { "oneOf", "anyOf" })
        {
            if (node.TryGetProperty(choice, out JsonElement options) && !node.TryGetProperty("properties", out _))
            {
                return options.EnumerateArray().SelectMany(option => Leaves(root, option, path));
            }
        }

        if (node.TryGetProperty("properties", out JsonElement fields))
        {
            string before = path.Length == 0 ? "" : path + ".";
            return fields.EnumerateObject().SelectMany(field => Leaves(root, field.Value, before + field.Name));
        }

        return node.TryGetProperty("items", out JsonElement item) && HasFields(root, item) ? Leaves(root, item, path + "[]") : [path];
    }

    private static bool HasFields(JsonElement root, JsonElement item) => Leaves(root, item, "").Any(path => path.Length > 0);

    private static string RootOf(DirectoryInfo folder) =>
        File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")) ? folder.FullName : RootOf(folder.Parent!);
}
