using System.Text.Json.Nodes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Parts;

/// <summary>Story 13: options change parts list and labels, and no number.</summary>
public sealed class PartsListTests
{
    private static readonly Recipe s_twin = Read("breakwater-twin.json"),
        s_bridge = Read("harbour-bridge.json");
    private static readonly Prediction s_forecast = Forecast(s_twin);

    [Fact]
    public void Parts_are_counted_and_like_ones_stand_in_one_line()
    {
        PartsList list = PartsList.Of(s_twin, s_forecast, [], 12);
        Assert.Equal(
            ["bobbin, slug and screw: 2", "rod, slug: 6", "screw, screw: 6", "bar magnet: 1"],
            list.Parts.Take(4).Select(part => $"{part.Name}: {part.Each}")
        );
        Assert.Contains("alnico 5, 62.0 mm × 12.5 mm × 3.20 mm", list.Parts[3].What, StringComparison.Ordinal);
        Assert.Contains(list.Parts, part => part is { Name: "potting", What: "wax, as the bath takes it" });
        Assert.Empty(list.Notes);
    }

    [Fact]
    public void Wire_is_the_forecasts_over_all_coils_of_it()
    {
        WireLine wire = Assert.Single(PartsList.Of(s_twin, s_forecast, [], 1).Wire);
        Assert.Equal("AWG 42, plain enamel, single", wire.Name);
        Assert.Equal(s_forecast.Coils.Sum(coil => coil.WireMass.Value), wire.MassKg, 12);
        Assert.Equal(s_forecast.Coils.Sum(coil => coil.WireLength.Value), wire.LengthM, 9);
        Assert.InRange(wire.Part, 1e-4, 0.2);
    }

    [Fact]
    public void Options_stand_at_their_parts_and_no_predicted_number_hears_them()
    {
        JsonNode document = JsonNode.Parse(s_bridge.Json)!;
        document["tags"] = new JsonArray("bobbin colour: white", "leads: two single, 0.6 m", "left-handed: yes", "for the shelf");
        Recipe tagged = RecipeReader.Read(document.ToJsonString()).Value!;
        Prediction plain = Forecast(s_bridge),
            withTags = Forecast(tagged);
        Assert.Equal(Numbers(plain), Numbers(withTags)); // to the last bit

        List<Problem> problems = [];
        IReadOnlyList<PartOption> options = PartOption.Of(tagged, ["bobbin colour: slate", "cover: nickel silver", "strings: 7"], problems);
        PartsList list = PartsList.Of(tagged, withTags, options, 1),
            bare = PartsList.Of(s_bridge, plain, [], 1);
        Assert.Empty(problems);
        Assert.Equal(
            ["bobbin colour: slate", "leads: two single, 0.6 m", "left-handed: yes", "cover: nickel silver", "strings: 7"],
            options.Select(option => option.Line)
        ); // what is given takes the place of the tag
        PartLine Part(string name) => list.Parts.Single(part => part.Name == name);
        Assert.Equal(["bobbin colour: slate"], Part("bobbin, main").Options);
        Assert.Equal(["leads: two single, 0.6 m"], Part("leads").Options);
        Assert.Equal("as chosen; not in the recipe", Part("cover").What);
        Assert.Equal((7, 6), (Part("rod, main").Each, bare.Parts.Single(part => part.Name == "rod, main").Each));
        Assert.Equal(bare.Wire.Select(wire => wire.MassKg), list.Wire.Select(wire => wire.MassKg));
        Assert.Equal(3, list.Notes.Count);
        Assert.Contains("for its numbers with 7 make a variant", list.Notes[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Wrong_options_are_named_at_once()
    {
        List<Problem> problems = [];
        PartOption.Of(s_bridge, ["slate", "strings: many", " ", "cover: " + new string('x', 200)], problems);
        Assert.Equal(3, problems.Count);
        Assert.All(problems, problem => Assert.Equal("option", problem.Field));
        Assert.Throws<ArgumentOutOfRangeException>(() => PartsList.Of(s_bridge, s_forecast, [], 0));
    }

    private static double[] Numbers(Prediction prediction) =>
        [
            .. prediction
                .Coils.SelectMany(coil => coil.All)
                .Concat(prediction.Pickup.All)
                .SelectMany(figure => (double[])[figure.Estimate.Value, figure.Estimate.Low, figure.Estimate.High]),
        ];

    private static Recipe Read(string file) => RecipeReader.Read(File.ReadAllText(RepositoryPath.Of("demo/recipes/" + file))).Value!;

    private static Prediction Forecast(Recipe recipe) => Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null);
}
