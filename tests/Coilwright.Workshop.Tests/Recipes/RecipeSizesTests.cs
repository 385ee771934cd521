using Coilwright.Physics;
using Coilwright.Physics.Sizes;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Sizes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Tests.Recipes;

public sealed class RecipeSizesTests
{
    private static string Bridge(params (string From, string To)[] edits) =>
        edits.Aggregate(DemoFiles.Recipe("harbour-bridge"), (json, edit) => json.Replace(edit.From, edit.To, StringComparison.Ordinal));

    private static PickupModel Model(string json, SizeRules? rules = null)
    {
        ReadOutcome<Recipe> read = RecipeReader.Read(json);
        Assert.True(read.Ok, string.Join("; ", read.Problems));
        return RecipeModelBuilder.ToModel(rules is null ? read.Value! : read.Value! with { SizeRules = rules });
    }

    private static PartSize Size(PickupModel model, SizeKind kind) => model.Sizes.First(size => size.Kind == kind);

    [Fact]
    public void A_typed_interval_holds_and_names_its_length()
    {
        PartSize width = Size(Model(Bridge(("\"coreWidth\": \"6.2 mm\"", "\"coreWidth\": \"6.2 mm ± 0.05 mm\""))), SizeKind.CoreWidth);
        Assert.Equal("core width of the bobbin", width.Name);
        Assert.Equal(0.05e-3, width.HalfWidthM, 1e-12);
        Assert.Equal("as typed: ±0.05 mm", width.Source);
    }

    [Fact]
    public void A_coil_by_itself_keeps_its_own_lengths_and_those_of_the_metal()
    {
        PickupModel twin = Model(DemoFiles.Recipe("breakwater-twin"), new SizeRules { CommonM = 0.15e-3, ClearanceM = 0.1e-3 });
        Assert.NotEmpty(twin.Sizes);
        PickupModel second = twin.Alone(1);
        Assert.All(second.Sizes.Where(size => size.IsOfCoil), size => Assert.Equal(0, size.Part));
        Assert.Equal(
            twin.Sizes.Where(size => !size.IsOfCoil || size.Part == 1).Select(size => (size.Kind, size.Name, size.Estimate)),
            second.Sizes.Select(size => (size.Kind, size.Name, size.Estimate))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => twin.Alone(2));
    }

    [Fact]
    public void A_length_of_which_nothing_is_said_is_exact_until_the_shop_says_how_well_it_is_known()
    {
        Assert.Empty(Model(Bridge()).Sizes);
        PickupModel model = Model(Bridge(), new SizeRules { CommonM = 0.15e-3, ClearanceM = 0.1e-3 });
        Assert.Equal(0.15e-3, Size(model, SizeKind.CoreWidth).HalfWidthM, 1e-12);
        Assert.Equal(0.1e-3, Size(model, SizeKind.Clearance).HalfWidthM, 1e-12);
    }

    [Theory]
    [InlineData(", \"made\": \"moulded\"", 0.1e-3, 0.2, "drawn and moulded")]
    [InlineData(", \"made\": \"by-hand\"", 0.186e-3, 1, "drawn and built by hand")] // ±0.2 mm, of 6.2 mm at most 3 %
    [InlineData(", \"made\": \"moulded\", \"measured\": true", 0.05e-3, 0.2, "measured by caliper")]
    public void Without_one_the_making_of_the_part_decides(string making, double withinM, double share, string words)
    {
        PartSize width = Size(
            Model(Bridge(("\"material\": \"vulcanised-fibre\"", "\"material\": \"vulcanised-fibre\"" + making))),
            SizeKind.CoreWidth
        );
        Assert.Equal(withinM, width.HalfWidthM, 1e-12);
        Assert.Equal(share, width.PieceShare);
        Assert.Contains(words, width.Source, StringComparison.Ordinal);
        Assert.Contains("our assumption", width.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void The_shop_may_state_its_own()
    {
        ReadOutcome<ShopRules> rules = ShopRulesReader.Read(
            """{ "format": "coilwright.rules/1", "sizes": { "common": "0.04 mm", "commonShare": "10 %", "clearance": "0.2 mm" } }"""
        );
        Assert.True(rules.Ok);
        KnownParts parts = KnownParts.None.With(rules.Value!.Sizes);
        PickupModel model = RecipeModelBuilder.ToModel(parts.Fill(RecipeReader.Read(Bridge()).Value!));
        PartSize height = Size(model, SizeKind.WindingHeight);
        Assert.Equal(0.04e-3, height.HalfWidthM, 1e-12);
        Assert.Equal(0.1, height.PieceShare, 1e-12);
        Assert.Contains("by the shop's rules", height.Source, StringComparison.Ordinal);
        Assert.Equal(0.2e-3, Size(model, SizeKind.Clearance).HalfWidthM, 1e-12);
    }

    [Fact]
    public void A_rule_outside_its_range_is_named()
    {
        ReadOutcome<ShopRules> rules = ShopRulesReader.Read(
            """{ "format": "coilwright.rules/1", "sizes": { "moulded": "7 mm", "mouldedShare": "140 %" } }"""
        );
        Assert.Equal(["sizes.moulded", "sizes.mouldedShare"], rules.Problems.Select(problem => problem.Field).Order());
        Assert.Contains(rules.Problems, problem => problem.Allowed == "0 mm to 2 mm");
    }

    [Fact]
    public void Every_demo_recipe_keeps_its_values_and_names_each_length_once()
    {
        foreach (string name in DemoFiles.Recipes().Select(row => row.Data))
        {
            PickupModel model = Model(DemoFiles.Recipe(name));
            Assert.Equal(model.Sizes.Count, model.Sizes.Select(size => (size.Kind, size.Part, size.Row)).Distinct().Count());
            Assert.All(model.Sizes, size =>
            {
                PickupModel still = SizeMoves.Move(model, size, 0);
                Assert.Equal(model.Coils[0].Bobbin, still.Coils[0].Bobbin);
                Assert.True(size.Estimate.Low < size.Estimate.Value);
            });
        }
    }

    [Theory]
    [InlineData("\"coreWidth\": \"6.2 mm\"", "\"coreWidth\": \"6.2 mm ±\"", "coils[0].bobbin.coreWidth")]
    [InlineData("\"coreWidth\": \"6.2 mm\"", "\"coreWidth\": \"6.2 mm ± 7 mm\"", "coils[0].bobbin.coreWidth")]
    [InlineData("\"coreWidth\": \"6.2 mm\"", "\"coreWidth\": \"6.2 mm ± -0.1 mm\"", "coils[0].bobbin.coreWidth")]
    [InlineData("\"diameter\": \"4.75 mm\"", "\"diameter\": \"4.75 mm ± 3 g\"", "coils[0].poles[0].diameter")]
    [InlineData("\"clearance\": \"2.5 mm\"", "\"clearance\": \"2.5 mm ± 9 mm\"", "strings.clearance")]
    [InlineData("\"tension\": \"14 gf\"", "\"tension\": \"14 gf ± 1 gf\"", "coils[0].winding.tension")]
    public void Bad_intervals_are_named_with_their_field_and_range(string from, string to, string field)
    {
        Problem problem = Assert.Single(RecipeReader.Read(Bridge((from, to))).Problems);
        Assert.Equal(field, problem.Field);
        Assert.Contains("±", problem.Message, StringComparison.Ordinal);
        Assert.True(
            field.EndsWith("tension", StringComparison.Ordinal) || problem.Allowed!.StartsWith("± 0 to less than", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_rare_way_of_making_is_refused_with_the_ways_there_are()
    {
        Problem problem = Assert.Single(RecipeReader.Read(Bridge(("\"coreWidth\"", "\"made\": \"melted\", \"coreWidth\""))).Problems);
        Assert.Equal("coils[0].bobbin.made", problem.Field);
        Assert.Equal("moulded, by-hand", problem.Allowed);
    }
}
