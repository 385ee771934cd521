using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Tests.Cards;

/// <summary>Every paper that shows a step prints the cautions of that step, and of no other bath.</summary>
public sealed class CautionsOnPapersTests
{
    private static readonly string[] s_baths = [Cautions.HotWax, Cautions.Vapour, Cautions.Hardener];
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "C", new DateOnly(2026, 3, 2));

    [Theory]
    [InlineData("none")]
    [InlineData("wax", Cautions.HotWax)]
    [InlineData("paraffin", Cautions.HotWax)]
    [InlineData("beeswax", Cautions.HotWax)]
    [InlineData("lacquer", Cautions.Vapour)]
    [InlineData("epoxy", Cautions.Hardener, Cautions.Vapour)]
    public void Card_traveller_and_tag_warn_of_the_bath_and_of_no_other(string kind, params string[] wanted)
    {
        Recipe twin = ExampleRecipe.Read("breakwater-twin.json"),
            recipe = twin with { Potting = twin.Potting! with { Kind = kind } };
        Assert.Equal(wanted.Order(), Told(Card(recipe)));
        StepPart? potting = Traveller.Of(recipe, s_heading).Parts.OfType<StepPart>().SingleOrDefault(step => step.Name == "potting");
        Assert.Equal(
            wanted.Order(),
            s_baths.Where(text => potting?.Cautions.Any(caution => caution.Contains(text, StringComparison.Ordinal)) == true).Order()
        );
        if (kind != "none")
        {
            PottingBasket basket = new("B-031", kind, "W-7", ["HB-001"], DateTimeOffset.UnixEpoch, TimeSpan.FromMinutes(10), 65, "fibre");
            ProcessTag tag = ProcessTags.Of(basket, "BASKET/B-031", TimeZoneInfo.Utc);
            Assert.Equal(wanted.Order(), s_baths.Where(text => tag.Caution.Contains(text, StringComparison.Ordinal)).Order());
            Assert.NotEmpty(ProcessTagPdf.Render([tag])); // and it fits the tag
        }
    }

    [Fact]
    public void The_card_warns_of_all_that_its_winder_will_do()
    {
        Recipe twin = ExampleRecipe.Read("breakwater-twin.json");
        string[] wanted = [Cautions.Spindle, Cautions.FineWire, Cautions.EndFume, Cautions.Mains, Cautions.HotWax, Cautions.Magnets];
        Assert.All(wanted, text => Assert.Contains(text, Words(Card(twin)), StringComparison.Ordinal));
    }

    [Fact]
    public void The_traveller_warns_of_mains_at_the_iron_and_the_charger_and_of_the_loudspeaker_at_the_test()
    {
        StepPart[] steps = [.. Traveller.Of(ExampleRecipe.Read("breakwater-twin.json"), s_heading).Parts.OfType<StepPart>()];
        string Told(string name) => string.Join(' ', steps.Single(step => step.Name == name).Cautions);
        Assert.All(["assembly", "magnets"], name => Assert.Contains(Cautions.Mains, Told(name), StringComparison.Ordinal));
        Assert.Contains(Cautions.Charger, Told("magnets"), StringComparison.Ordinal);
        Assert.Contains(Cautions.Loudspeaker, Told("final test"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_wiring_sheet_that_brings_iron_to_a_pole_warns_of_magnets()
    {
        Recipe twin = ExampleRecipe.Read("breakwater-twin.json");
        string words = Words(WiringSheet.Of(twin, s_heading, new Wiring()));
        Assert.All(Cautions.For(Job.Wiring), text => Assert.Contains(text, words, StringComparison.Ordinal));
        Assert.Contains(Cautions.Magnets, words, StringComparison.Ordinal);
    }

    private static string[] Told(Sheet sheet) => [.. s_baths.Where(text => Words(sheet).Contains(text, StringComparison.Ordinal)).Order()];

    private static string Words(Sheet sheet) => string.Join(' ', sheet.Parts.OfType<CautionPart>().Select(part => part.Text));

    private static Sheet Card(Recipe recipe) =>
        RecipeCard.Of(
            recipe,
            WindingSetUp.For(
                recipe,
                RecipeModelBuilder.ToModel(recipe),
                Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null)
            ) with
            {
                Heading = s_heading,
            },
            new RecipeStatus()
        );
}
