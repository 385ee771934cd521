using Coilwright.Papers.Cards;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Cards;

public sealed class WiringSheetTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "B", new DateOnly(2026, 3, 2));
    private static readonly Recipe s_twin = ExampleRecipe.Read("breakwater-twin.json");

    /// <summary>How a caller makes the sheet: the shop's colours and the positions of its switch.</summary>
    private static readonly Wiring s_wiring = new()
    {
        Colours =
        [
            new LeadColour("slug", "start", "grey"),
            new LeadColour("slug", "finish", "pink"),
            new LeadColour("screw", "start", "violet"),
            new LeadColour("screw", "finish", "orange"),
        ],
        Positions =
        [
            new SwitchPosition("1: both", ["slug", "screw"], []),
            new SwitchPosition("2: screw alone", ["screw"], []),
            new SwitchPosition("3: against each other", ["slug", "screw"], ["slug"]),
        ],
    };

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void The_sheet_says_ends_colours_positions_and_the_expected_first_swing(PaperSize size)
    {
        PrintedPaper sheet = PrintedPaper.Of(WiringSheet.Of(s_twin, s_heading, s_wiring), size);

        Assert.Equal(1, sheet.Pages);
        sheet.Says(
            "Wiring sheet",
            "in phase, hum cancels",
            "in series: ground – slug – screw – output",
            "finish of slug",
            "start of screw",
            "output (hot)",
            "grey",
            "pink",
            "violet",
            "orange",
            "1: both",
            "2: screw alone",
            "nothing cancels it",
            "slug (ends exchanged)",
            "out of phase, hum adds",
            "Test with iron",
            "swings positive first",
            "Burning enamel off",
            "Follow the product's safety data sheet"
        );
    }

    /// <summary>
    /// Expected by the rule of signs on paper: the slug coil runs counter-clockwise over the bar's south side, the screw coil clockwise
    /// over its north side: string sign − on both, so the hot end swings up.
    /// </summary>
    [Fact]
    public void Poles_and_swing_follow_from_direction_and_magnet()
    {
        TablePart coils = Tables(WiringSheet.Of(s_twin, s_heading, s_wiring))[0],
            below = Tables(WiringSheet.Of(s_twin, s_heading, s_wiring with { Side = SeenFrom.Bottom }))[0];

        Assert.Equal(["slug", "counter-clockwise", "south", "ground", "start of screw"], coils.Rows[0]);
        Assert.Equal(["screw", "clockwise", "north", "finish of slug", "output (hot)"], coils.Rows[1]);
        Assert.Equal(("clockwise", "counter-clockwise"), (below.Rows[0][1], below.Rows[1][1]));
        Assert.Contains("the bottom", below.Headings[1], StringComparison.Ordinal);
        Assert.All(Tables(WiringSheet.Of(s_twin, s_heading, s_wiring))[3].Rows, row =>
            Assert.StartsWith("up", row[1], StringComparison.Ordinal)
        );
    }

    /// <summary>Story 7's set: A counter… and B, with each combination of direction and pole, by the words of the story.</summary>
    [Theory]
    [InlineData(WindingDirection.Clockwise, PoleTop.South, "in phase, hum cancels")]
    [InlineData(WindingDirection.CounterClockwise, PoleTop.North, "in phase, hum adds")]
    [InlineData(WindingDirection.Clockwise, PoleTop.North, "out of phase, hum cancels")]
    [InlineData(WindingDirection.CounterClockwise, PoleTop.South, "out of phase, hum adds")]
    public void A_second_pickup_is_judged_by_its_signs(WindingDirection direction, PoleTop pole, string words)
    {
        Recipe bridge = ExampleRecipe.Read("harbour-bridge.json"); // counter-clockwise, north up, 8,000 turns
        Wiring wiring = new()
        {
            Others = [new CoilSigns("neck", direction, SeenFrom.Top, HotEnd.Finish, pole, 8000)],
            Positions = [new SwitchPosition("middle", ["main", "neck"], [])],
        };

        Assert.Equal(words, Tables(WiringSheet.Of(bridge, s_heading, wiring))[2].Rows[0][2]);
    }

    [Fact]
    public void Without_the_shops_colours_there_are_lines_to_fill_and_no_colour()
    {
        Sheet sheet = WiringSheet.Of(s_twin, s_heading, new Wiring());

        Assert.All(Tables(sheet)[1].Rows, row => Assert.All(row.Skip(1), cell => Assert.Matches("^_+$", cell)));
        string html = SheetHtmlWriter.Render([sheet]);
        Assert.Contains("________", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Coils_that_work_against_each_other_are_boxed_and_one_colour_for_two_leads_is_told()
    {
        Recipe wrong = s_twin with
        {
            Coils =
            [
                s_twin.Coils[0],
                s_twin.Coils[1] with
                {
                    Winding = s_twin.Coils[1].Winding with { Direction = WindingDirection.CounterClockwise },
                },
            ],
        };

        PrintedPaper sheet = PrintedPaper.Of(
            WiringSheet.Of(
                wrong,
                s_heading,
                new Wiring { Colours = [new LeadColour("slug", "start", "grey"), new LeadColour("screw", "finish", "Grey")] }
            )
        );

        sheet.Says("out of phase, hum adds", "Do not wind before", "grey stands for the start of slug and the finish of screw");
    }

    [Fact]
    public void Every_wrong_entry_is_told_at_once()
    {
        Wiring wrong = new()
        {
            Colours =
            [
                new LeadColour("rail", "start", "grey"),
                new LeadColour("slug", "middle", ""),
                new LeadColour("slug", "start", "a"),
                new LeadColour("slug", "start", "b"),
            ],
            Positions = [new SwitchPosition("1", [], []), new SwitchPosition("2", ["neck"], ["slug"])],
        };

        IReadOnlyList<Problem> problems = wrong.Check(RecipePhase.Of(s_twin).Coils);

        Assert.Equal(
            [
                "colours[0].coil",
                "colours[1].end",
                "colours[1].colour",
                "colours",
                "positions[0].sounding",
                "positions[1].sounding",
                "positions[1].exchanged",
            ],
            problems.Select(problem => problem.Field)
        );
        Assert.All(problems, problem => Assert.False(string.IsNullOrEmpty(problem.Allowed)));
        Assert.Throws<ArgumentException>(() => WiringSheet.Of(s_twin, s_heading, wrong));
    }

    private static TablePart[] Tables(Sheet sheet) => [.. sheet.Parts.OfType<TablePart>()];
}
