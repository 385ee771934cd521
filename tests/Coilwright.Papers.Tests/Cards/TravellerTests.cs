using Coilwright.Papers.Cards;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Tests.Cards;

public sealed class TravellerTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "C", new DateOnly(2026, 3, 2));
    private static readonly Recipe s_recipe = ExampleRecipe.Read("breakwater-twin.json");

    private static DateTimeOffset At(int hour, int minute) => new(2026, 3, 2, hour, minute, 0, TimeSpan.Zero);

    /// <summary>How a caller makes the traveller of a piece: heading from the book, steps done from the records.</summary>
    private static readonly TravellerFacts s_facts = new()
    {
        Piece = "BT-007",
        Batch = "B-12",
        Runs =
        [
            new StepRun("assembly", At(9, 0), At(9, 40)),
            new StepRun("magnets", At(9, 40), At(9, 55)),
            new StepRun("potting", At(14, 5), At(14, 20)),
        ],
        Holds = [new Hold("inspect: the bath was too warm", At(14, 12), null)],
        NowUtc = At(14, 25),
    };

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Revision_shop_piece_times_and_holds_are_printed_where_the_caller_knows_them(PaperSize size)
    {
        PrintedPaper paper = PrintedPaper.Of(Traveller.Of(s_recipe, s_heading, s_facts), size);

        Assert.Equal(1, paper.Pages);
        paper.Says(
            "Breakwater twin, revision C, Tin Shed Pickups, page 1 of 1",
            "Piece: BT-007 Batch: B-12",
            "On hold",
            "inspect: the bath was too warm, until a person lifts it",
            "Hold: wax sets and cools, until 2026-03-02 14:50",
            "takes 10 min at least, 70 min at most",
            "then hold for 30 min: wax sets and cools",
            "begun 2026-03-02 14:05, done 2026-03-02 14:20",
            "then hold for 24 h: ink cures",
            "done at ______________ by",
            "Molten wax burns",
            "hardeners can cause permanent",
            "Follow the product's"
        );
    }

    [Fact]
    public void A_step_that_goes_on_says_when_it_may_end()
    {
        Sheet sheet = Traveller.Of(
            s_recipe,
            s_heading,
            s_facts with
            {
                Holds = [],
                Runs = [.. s_facts.Runs.Take(2), new StepRun("potting", At(14, 5), null)],
                NowUtc = At(14, 10),
            }
        );

        Assert.Contains(sheet.Parts.OfType<StepPart>().Single(step => step.Name == "potting").Lines, line =>
            line == "not before 2026-03-02 14:15"
        );
        Assert.Contains("14:15", sheet.Parts.OfType<FiguresPart>().Single().Figures[0].Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_that_charges_magnets_asks_for_the_level_and_says_what_was_done()
    {
        StepPlan full = new(StepPlan.Magnets, TimeSpan.Zero, null, TimeSpan.Zero, "", [Cautions.Magnets]),
            down = full with { Name = "knock down", Charge = new RequiredCharge(new MagnetLevel(0.8), 0.03) };

        string[][] blank = [.. Steps(new TravellerFacts { Steps = [full, down] })],
            done = [.. Steps(new TravellerFacts { Steps = [full, down], Charge = "knocked down to 80 % of full" })];

        Assert.Contains("magnets charged full ☐", blank[0][^1], StringComparison.Ordinal);
        Assert.Equal("magnets wanted: knocked down to 80 % of full ±3 %", blank[1][^2]);
        Assert.DoesNotContain(done[0], line => line.StartsWith("magnets", StringComparison.Ordinal));
        Assert.Equal("magnets: knocked down to 80 % of full", done[1][^1]);
        static IEnumerable<string[]> Steps(TravellerFacts facts) =>
            Traveller.Of(s_recipe, s_heading, facts).Parts.OfType<StepPart>().Select(step => step.Lines.ToArray());
    }

    [Fact]
    public void The_shops_own_steps_take_the_place_of_the_usual_ones()
    {
        StepPlan soak = new("soak", TimeSpan.Zero, TimeSpan.FromHours(3), TimeSpan.Zero, "", []),
            cure = new("cure", TimeSpan.FromHours(12), null, TimeSpan.FromHours(2), "cools", []);

        StepPart[] steps = [.. Traveller.Of(s_recipe, s_heading, new TravellerFacts { Steps = [soak, cure] }).Parts.OfType<StepPart>()];

        Assert.Equal(["takes 3 h at most", "done at ______________ by ______________"], steps[0].Lines);
        Assert.Equal(
            ["takes 12 h at least", "then hold for 2 h: cools", "begun at __________, done at __________ by __________"],
            steps[1].Lines
        );
        Assert.Equal([1, 2], steps.Select(step => step.Number));
    }

    [Fact]
    public void Every_wrong_entry_is_told_at_once()
    {
        StepPlan plan = new("soak", TimeSpan.FromHours(3), TimeSpan.FromHours(1), TimeSpan.Zero, "", []);
        TravellerFacts wrong = new()
        {
            Steps = [plan, plan with { Most = null }],
            Runs = [new StepRun("bake", At(9, 0), null), new StepRun("soak", At(9, 0), At(8, 0))],
        };

        Assert.Equal(
            ["two steps bear this name", "the longest time is shorter than the shortest", "there is no such step", "ended before it began"],
            wrong.Check(wrong.Steps).Select(problem => problem.Message)
        );
        Assert.Throws<ArgumentException>(() => Traveller.Of(s_recipe, s_heading, wrong));
    }
}
