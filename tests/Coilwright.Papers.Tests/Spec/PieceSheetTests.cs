using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Sheets;
using Coilwright.Papers.Spec;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Spec;

public sealed class PieceSheetTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "C", new DateOnly(2026, 3, 2));
    private static readonly Recipe s_recipe = ExampleRecipe.Read("harbour-bridge.json");
    private static readonly LoadCircuit s_load = UsualLoad.All[0].Load;
    private static readonly Prediction s_prediction = Forecaster.Predict(
        RecipeModelBuilder.ToModel(s_recipe),
        s_load,
        new ForecastOptions { CurvePoints = 300, Strings = false }
    );

    /// <summary>How a caller makes the sheet: readings as they stand in the records, the resistance at its own temperature.</summary>
    private static readonly PieceFacts s_piece = new(
        "HB-023",
        [
            new PieceReading("dcResistance", 6300)
            {
                TemperatureC = 35,
                Instrument = "bench meter 2",
                UncertaintyPart = 0.001,
            },
            new PieceReading("inductance", 2.45)
            {
                AtHz = 1000,
                TemperatureC = 23,
                Instrument = "bridge",
                UncertaintyPart = 0.005,
            },
            new PieceReading("q", 2.1) { AtHz = 1000, Instrument = "bridge" },
            new PieceReading("acResistance", 7100) { AtHz = 1000, Instrument = "bridge" },
        ]
    )
    {
        Poles = new PoleReading([0.094, 0.096, 0.095, 0.0985, 0.101, 0.097], 1e-3, "gauss meter"),
        FirstSwing = -1,
        Set = "Lantern 3, bridge",
        Charge = "knocked down to 80 % of full, with coil charger 2",
    };

    private static Sheet Made(bool hide = false, bool house = false) =>
        PieceSheet.Of(s_recipe, s_prediction, s_load, s_piece, s_heading, hideTurns: hide, forHouse: house);

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void The_piece_is_told_with_temperature_frequency_load_gauss_and_both_units(PaperSize size)
    {
        PrintedPaper sheet = PrintedPaper.Of(Made(), size);

        Assert.Equal(1, sheet.Pages);
        sheet.Says(
            "Serial",
            "HB-023",
            "Read on this piece of set Lantern 3, bridge",
            "DC resistance at 20 °C",
            "5.949 kΩ",
            "±0.1 %",
            "read at 35.0 °C",
            "inductance at 1.00 kHz",
            "2.450 H",
            "Q at 1.00 kHz",
            "not stated",
            "AC resistance at 1.00 kHz",
            "1.00 mm (0.039 in)",
            "940 G",
            "94.0 mT",
            "pole 6, north",
            "spread 7.2 %",
            "the hot end swings negative first",
            "Top of the poles: north",
            "Magnets and polarity: knocked down to 80 % of full, with coil charger 2",
            "Forecast of the model, not measured on this piece",
            "Loaded means:",
            " mm (",
            " in)",
            "8,000"
        );
    }

    [Fact]
    public void How_far_a_reading_lies_from_the_recipe_stays_in_the_shop()
    {
        PrintedPaper customers = PrintedPaper.Of(Made()),
            house = PrintedPaper.Of(Made(house: true));

        house.Says("against the recipe", "−3.7 %", "(target", "−2.0 % (target 2.500 H)", "(forecast", "stays in the shop", "8,000");
        Assert.All((string[])["against the recipe", "−3.7 %", "(target", "(forecast", "deviation"], words =>
            Assert.DoesNotContain(words, customers.Text, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Turns_stay_in_the_shop_when_asked()
    {
        PrintedPaper sheet = PrintedPaper.Of(Made(hide: true));

        sheet.Says("not told");
        Assert.DoesNotContain("8,000", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("8,000", SheetHtmlWriter.Render([Made(hide: true)]), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_temperature_the_value_is_kept_and_its_doubt_is_told()
    {
        Sheet sheet = PieceSheet.Of(
            s_recipe,
            s_prediction,
            s_load,
            new PieceFacts(
                "HB-024",
                [
                    new PieceReading("dcResistance", 6180),
                    new PieceReading("inductance", double.NaN) { Flag = "open" },
                    new PieceReading("inductance", 2.4),
                ]
            ),
            s_heading,
            forHouse: true
        );

        IReadOnlyList<IReadOnlyList<string>> rows = sheet.Parts.OfType<TablePart>().First().Rows;

        Assert.Equal(
            ["DC resistance at 20 °C", "6.180 kΩ", "±2 %, temperature unknown", "temperature not written down", "+0.0 % (target 6.180 kΩ)"],
            rows[0]
        );
        Assert.Equal(("open", "–"), (rows[1][1], rows[1][4]));
        Assert.Equal(("inductance, frequency not stated", "–"), (rows[2][0], rows[2][4]));
    }
}
