using System.Text.Json.Nodes;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Tests;

/// <summary>A recipe goes through the form and comes back with only what the person changed.</summary>
public sealed class RecipeFormTests
{
    private const string Recipe = """
        {"format":"coilwright.recipe/1","name":"Pier","coils":[{"name":"main","winding":{"turns":8000,"pitch":"0.19 mm"},
         "wire":{"gauge":"AWG 42","insulation":"plain-enamel"},"bobbin":{"coreLength":"64 mm","material":"vulcanised-fibre"}}],
         "magnets":[{"shape":"bar","size":["62 mm","12.5 mm","3.2 mm"]}],"notes":"keep me"}
        """;

    [Fact]
    public void An_untouched_form_changes_nothing()
    {
        JsonNode document = JsonNode.Parse(Recipe)!;
        Dictionary<string, StringValues> fields = RecipeForm
            .GroupsOf(document)
            .SelectMany(group => group.Fields)
            .Append(RecipeForm.Name)
            .ToDictionary(field => field.Path, field => new StringValues(RecipeForm.TextAt(document, field.Path)));
        Assert.Equal(
            ("plain enamel", "vulcanised fibre"),
            ((string?)fields["coils[0].wire.insulation"], (string?)fields["coils[0].bobbin.material"])
        );
        Assert.True(JsonNode.DeepEquals(document, JsonNode.Parse(RecipeForm.Apply(Recipe, new FormCollection(fields)))));
    }

    [Theory]
    [InlineData("coils[0].winding.turns", "8050", "8050")]
    [InlineData("coils[0].winding.turns", "8.000", "8000")]
    [InlineData("coils[0].winding.turns", "8,050", "8050")]
    [InlineData("coils[0].winding.turns", "8k", "8000")]
    [InlineData("coils[0].winding.pitch", "0,2 mm", "\"0.2 mm\"")]
    [InlineData("coils[0].winding.turns", "eight thousand", "\"eight thousand\"")]
    [InlineData("coils[0].winding.pitch", "0.2 mm", "\"0.2 mm\"")]
    [InlineData("leads.construction", "four conductor screened", "\"four-conductor-screened\"")]
    [InlineData("leads.length", "0,3 m", "\"0.3 m\"")]
    [InlineData("coils[0].hot", "start", "\"start\"")]
    [InlineData("magnets[0].size[1]", "13 mm", "\"13 mm\"")]
    [InlineData("coils[0].wire.insulation", "polyurethane", "\"polyurethane\"")]
    [InlineData("coils[0].wire.insulation", "heavy shellac", "\"heavy shellac\"")]
    public void A_changed_field_changes_its_own_value_alone(string path, string typed, string json)
    {
        string after = RecipeForm.Apply(Recipe, new FormCollection(new() { [path] = typed }));
        JsonNode expected = JsonNode.Parse(Recipe)!;
        JsonPath.Set(expected, path, JsonNode.Parse(json));
        Assert.True(JsonNode.DeepEquals(expected, JsonNode.Parse(after)), after);
    }

    [Fact]
    public void A_field_the_form_does_not_know_cannot_be_written()
    {
        string after = RecipeForm.Apply(Recipe, new FormCollection(new() { ["notes"] = "gone", ["format"] = "other/9" }));
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Recipe), JsonNode.Parse(after)));
    }

    [Fact]
    public void A_load_part_whose_size_was_emptied_is_not_there()
    {
        JsonNode load = LoadForm.Read(new FormCollection(new() { ["load.tone.resistance"] = "", ["load.cable.capacitance"] = "700 pF" }));
        Assert.Null(load["tone"]);
        Assert.Equal("700 pF", load["cable"]!["capacitance"]!.ToString());
        Assert.Equal("500 kΩ", load["volume"]!["resistance"]!.ToString());
    }

    [Fact]
    public void Every_choice_that_the_form_offers_is_one_that_a_recipe_may_hold()
    {
        string json = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "recipes", "breakwater-twin.json"));
        string[] choices =
        [
            .. RecipeForm
                .GroupsOf(JsonNode.Parse(json)!)
                .SelectMany(group => group.Fields)
                .SelectMany(field => field.Choices.Select(choice => field.Path + "=" + choice)),
        ];
        Assert.True(choices.Length > 20);
        Assert.All(choices, choice =>
        {
            (string path, string word) = (choice.Split('=')[0], choice.Split('=')[1]);
            JsonNode document = JsonNode.Parse(json)!;
            JsonPath.Set(document, path, JsonValue.Create(word));
            Assert.DoesNotContain(RecipeReader.Read(document.ToJsonString()).Problems, problem => problem.Field == path);
        });
    }
}
