using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Parts;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Parts;

public sealed class PartsSheetTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "C", new DateOnly(2026, 3, 2));
    private static readonly Recipe s_recipe = ExampleRecipe.Read("breakwater-twin.json");
    private static readonly Prediction s_prediction = Forecaster.Predict(
        RecipeModelBuilder.ToModel(s_recipe),
        load: null,
        new ForecastOptions { Strings = false }
    );

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Two_hundred_pieces_are_told_with_parts_options_and_the_mass_of_their_wire(PaperSize size)
    {
        PartsList list = PartsList.Of(
            s_recipe,
            s_prediction,
            [new PartOption("bobbin colour", "slate"), new PartOption("leads", "four and a screen, 0.3 m")],
            200
        );

        PrintedPaper paper = PrintedPaper.Of(PartsSheet.Of(s_recipe.Name, list, s_heading, s_recipe.Name), size);

        Assert.Equal(1, paper.Pages);
        string kilograms = FigureFormatter.Value(200 * s_prediction.Coils.Sum(coil => coil.WireMass.Value), "kg");
        paper.Says(
            "Parts list",
            "Breakwater twin, revision C, Tin Shed Pickups, page 1 of 1",
            "Pieces",
            "200",
            "Wire in all",
            kilograms,
            "bobbin colour: slate",
            "four and a",
            "1,200",
            "400",
            "AWG 42, plain enamel, single",
            "277 km",
            "does not hear them",
            "Follow the product's"
        );
        Assert.EndsWith("kg", kilograms, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_says_what_went_in()
    {
        Sheet sheet = PartsSheet.Of(
            s_recipe.Name,
            PartsList.Of(s_recipe, s_prediction, [], 1),
            s_heading,
            "2610-001",
            [("slug", "BS-001"), ("magnets", "M-5")]
        );
        Assert.Equal(["slug BS-001", "magnets M-5"], sheet.Parts.OfType<TablePart>().Last().Rows.Select(row => string.Join(' ', row)));
        Assert.Equal("2610-001", sheet.Code);
    }
}
