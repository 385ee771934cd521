using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Cards;

public sealed class RecipeCardTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "C", new DateOnly(2026, 3, 2));

    private static Sheet Card(string file) =>
        Card(
            ExampleRecipe.Read(file),
            s_heading,
            new RecipeStatus("released", "8,050 turns gave 1 % more ohms than the customer asked for", "Marta")
        );

    /// <summary>How a caller makes the card of a revision.</summary>
    private static Sheet Card(Recipe recipe, SheetHeading heading, RecipeStatus standing)
    {
        WindingSetUp setUp = WindingSetUp.For(
            recipe,
            RecipeModelBuilder.ToModel(recipe),
            Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null)
        ) with
        {
            Heading = heading,
        };
        return RecipeCard.Of(recipe, setUp, standing);
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Everything_a_winder_needs_of_one_revision_stands_on_one_page(PaperSize size)
    {
        PrintedPaper card = PrintedPaper.Of(Card("harbour-bridge.json"), size);

        Assert.Equal(1, card.Pages);
        card.Says(
            "Harbour bridge",
            "Revision",
            "released",
            "by Marta",
            "8,000",
            "AWG 42 plain enamel",
            "counter-clockwise",
            "seen from the top",
            "6.18 kΩ",
            "5.93 kΩ – 6.43 kΩ passes (±4 %)",
            "Inductance at 1.00 kHz",
            "2.50 H",
            "2.35 H – 2.65 H passes (±6 %)",
            "14.0 gf",
            "1,200 rpm",
            "0.190 mm",
            "turns per layer in 11.0 mm",
            "wax",
            "8,050 turns gave 1 %",
            "Rotating spindle",
            "Molten wax",
            "Follow the product's safety data sheet",
            "page 1 of 1"
        );
    }

    [Theory]
    [InlineData("breakwater-twin.json", PaperSize.A4)]
    [InlineData("breakwater-twin.json", PaperSize.Letter)]
    [InlineData("tideway-bass.json", PaperSize.A4)]
    [InlineData("tideway-bass.json", PaperSize.Letter)]
    public void Two_coils_stand_on_one_page_too(string file, PaperSize size)
    {
        PrintedPaper card = PrintedPaper.Of(Card(file), size);

        Assert.Equal(1, card.Pages);
        card.Says([
            .. ExampleRecipe.Read(file).Coils.Select(coil => $"Coil {coil.Name}: Direction"),
            "Every coil (",
            "counter-clockwise",
            " clockwise",
            "in series",
        ]);
    }

    [Theory]
    [InlineData("harbour-bridge.json")]
    [InlineData("breakwater-twin.json")]
    public void Key_figures_are_five_millimetres_high_to_be_read_from_a_metre(string file)
    {
        Sheet card = Card(file);
        string[] large = [.. PrintedPaper.Of(card).WordsOf(leastMm: 5)];

        Assert.All(
            (string[])
                [
                    .. ExampleRecipe
                        .Read(file)
                        .Coils.Select(coil => coil.Winding.Turns.ToString("#,##0", System.Globalization.CultureInfo.InvariantCulture)),
                    "C",
                    "released",
                    "kΩ",
                    "rpm",
                    "gf",
                ],
            word => Assert.Contains(word, large)
        );
    }

    [Fact]
    public void What_the_recipe_does_not_state_is_said_so_and_not_guessed()
    {
        Recipe bare = RecipeReader
            .Read(
                """
                { "format": "coilwright.recipe/1", "name": "Bare",
                  "coils": [ { "name": "main",
                    "bobbin": { "coreLength": "64 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm" },
                    "wire": { "gauge": "AWG 42" }, "winding": { "turns": 8000 } } ] }
                """
            )
            .Value!;

        PrintedPaper card = PrintedPaper.Of(Card(bare, new SheetHeading(), new RecipeStatus()));

        card.Says("in no shop's book", "no limit in the recipe", "recipe states none; band", "not stated in the recipe", "Potting none");
        Assert.DoesNotContain("passes", card.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Why this revision", card.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("harbour-bridge.json")]
    [InlineData("breakwater-twin.json")]
    public void Printed_from_a_browser_the_card_is_one_page_too(string file)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-card-");
        string page = Path.Combine(folder.FullName, "card.html"),
            pdf = Path.Combine(folder.FullName, "card.pdf");
        File.WriteAllText(page, SheetHtmlWriter.Render([Card(file)]));

        PrintedPaper.Run(
            "chromium",
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--user-data-dir=" + folder.FullName,
            "--no-pdf-header-footer",
            "--print-to-pdf=" + pdf,
            "file://" + page
        );

        Assert.Matches("Pages: +1\n", PrintedPaper.Run("pdfinfo", pdf));
        folder.Delete(recursive: true);
    }

    [Fact]
    public void The_screen_says_the_same()
    {
        string html = SheetHtmlWriter.Render([Card("harbour-bridge.json")]);

        Assert.All((string[])["Recipe card", "8,000", "5.93 kΩ – 6.43 kΩ passes (±4 %)", "14.0 gf", "Rotating spindle"], word =>
            Assert.Contains(word, html, StringComparison.Ordinal)
        );
    }
}
