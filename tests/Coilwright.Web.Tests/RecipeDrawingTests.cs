using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coilwright.Papers.Figures;
using Coilwright.Physics;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Starting;

namespace Coilwright.Web.Tests;

/// <summary>Every dimension of the drawing measures a field of the form, and says what stands in it.</summary>
public sealed partial class RecipeDrawingTests
{
    public static TheoryData<string> Recipes() =>
        [
            .. Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "recipes"), "*.json").Select(path => Path.GetFileName(path)),
            .. StartingRecipes.All.Select(shape => shape.Key),
        ];

    [Theory]
    [MemberData(nameof(Recipes))]
    public void A_dimension_is_a_field_of_the_form_with_the_fields_own_size(string name)
    {
        string json = name.EndsWith(".json", StringComparison.Ordinal)
            ? File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "recipes", name))
            : StartingRecipes.Find(name)!.Json;
        JsonNode document = JsonNode.Parse(json)!;
        HashSet<string> fields = [.. RecipeForm.GroupsOf(document).SelectMany(group => group.Fields).Select(field => field.Path)];
        PickupModel model = RecipeModelBuilder.ToModel(RecipeReader.Read(json).Value!);
        string svg = RecipeDrawing.Svg(model, [.. model.Coils.Select(_ => 3e-3)]);

        Match[] dimensions = [.. Dimension().Matches(svg).Cast<Match>()];
        Assert.True(dimensions.Length >= 4 * model.Coils.Count, $"{dimensions.Length} dimensions");
        Assert.All(dimensions, dimension =>
        {
            string path = WebUtility.HtmlDecode(dimension.Groups[1].Value);
            Assert.Contains(path, fields);
            string typed = RecipeForm.TextAt(document, path);
            Assert.True(QuantityParser.TryParse(typed, QuantityKind.Length, unitRequired: true, out Entered stated, out string why), why);
            double drawn = double.Parse(dimension.Groups[2].Value, CultureInfo.InvariantCulture);
            Assert.Equal(stated.Si * 1e3, drawn, 0.005);
        });
        Assert.Equal(dimensions.Length, dimensions.Select(dimension => dimension.Groups[1].Value).Distinct().Count());
    }

    [GeneratedRegex("data-dimension=\"([^\"]+)\" aria-label=\"[^\"]* ([0-9.]+) mm\"")]
    private static partial Regex Dimension();
}
