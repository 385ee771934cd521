using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Tests.Pieces;
using Coilwright.Workshop.Tracing;
using TestResult = Coilwright.Workshop.Pieces.TestResult;

namespace Coilwright.Workshop.Tests.Magnets;

/// <summary>Story 22: the charge state, full or knocked down to a level, is kept per piece.</summary>
public sealed class ChargeTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task The_charge_said_with_the_step_is_kept_and_the_last_one_holds()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string serial = (await shop.MakeAsync(1)).Serial,
            silent = (await shop.MakeAsync(2)).Serial;
        Assert.Equal(MagnetCharge.Unknown, MagnetCharge.Told((await shop.Shelf.FindAsync(serial, Cancel))!));
        Guid id = Guid.NewGuid();
        for (int sent = 0; sent < 2; sent++) // sent twice it is kept once
        {
            Assert.Empty(
                await shop.Steps.BeginAsync(id, "magnets", [serial], "", "Ines", Cancel, new ChargeEntry("full", "", "coil charger 2"))
            );
        }

        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [silent], "", "Ines", Cancel)); // optional
        await shop.ReopenAsync();
        PieceSnapshot life = (await shop.Shelf.FindAsync(serial, Cancel))!;
        Assert.Equal("charged full, with coil charger 2", MagnetCharge.Told(life));
        Assert.Equal("full", Assert.Single(life.Values).Typed);
        Assert.Null(MagnetCharge.Of((await shop.Shelf.FindAsync(silent, Cancel))!));

        shop.Shop.Clock.Advance(TimeSpan.FromMinutes(5));
        Assert.Empty(
            await shop.Magnets.ChargeAsync(
                Guid.NewGuid(),
                [serial, silent],
                new ChargeEntry("85 %", "", "coil, reversed"),
                "too hot in the bridge",
                "Joss",
                Cancel
            )
        );
        TracedPiece traced = (await shop.Trace.PieceAsync(serial, Cancel))!;
        Assert.Equal("knocked down to 85 % of full, with coil, reversed; too hot in the bridge", MagnetCharge.Told(traced.Snapshot));
        Assert.Equal("Joss", MagnetCharge.Of(traced.Snapshot)!.Person);
        Assert.Equal(
            [
                "magnets begun",
                "magnets ended: charged full, with coil charger 2",
                "knocked down to 85 % of full, with coil, reversed; too hot in the bridge",
            ],
            traced.Snapshot.History.InForce.Select(one => one.Sentence(traced))
        );
    }

    [Fact]
    public async Task A_charge_taken_back_leaves_the_one_before()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [piece.Serial], "", "Ines", Cancel, new ChargeEntry("full")));
        Assert.Empty(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [piece.Serial], new ChargeEntry("50 %"), "", "Ines", Cancel));
        MagnetsCharged wrong = (await shop.Shelf.FindAsync(piece.Serial, Cancel))!.History.InForce.OfType<MagnetsCharged>().Single();
        await shop.Shop.Records.Pieces.AddEventsAsync(
            [
                new Undone
                {
                    Id = Guid.NewGuid(),
                    PieceId = piece.Id,
                    About = wrong.Id,
                    Reason = "another piece",
                    TimeUtc = wrong.TimeUtc,
                },
            ],
            [],
            Cancel
        );
        Assert.Equal("charged full", MagnetCharge.Told((await shop.Shelf.FindAsync(piece.Serial, Cancel))!));
    }

    [Fact]
    public async Task A_level_that_the_recipe_asks_for_is_met_or_refused_with_the_remedy()
    {
        await using PieceShop shop = await PieceShop.StartAsync(
            steps: """[ { "name": "magnets", "level": "80 %", "levelTolerance": "3 %" }, { "name": "marking" } ]"""
        );
        string serial = (await shop.MakeAsync(1)).Serial;
        async Task<Problem> RefusedAsync(string charge, string jig = "") =>
            Assert.Single(
                await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel, new ChargeEntry(charge, jig))
            );

        Assert.Contains(
            "charged to what? Its recipe asks for 80 % of full ±3 %",
            (await RefusedAsync("")).Message,
            StringComparison.Ordinal
        );
        Assert.Contains("knock it down further", (await RefusedAsync("full")).Message, StringComparison.Ordinal);
        Assert.Contains("charge it full, knock it down anew", (await RefusedAsync("70 %")).Message, StringComparison.Ordinal);
        Assert.Contains("cannot be held against", (await RefusedAsync("900 G")).Message, StringComparison.Ordinal);
        Assert.Null(MagnetCharge.Of((await shop.Shelf.FindAsync(serial, Cancel))!)); // nothing half-kept
        // 2.5 % over, 3 % allowed
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel, new ChargeEntry("82 %")));
        Assert.Contains(
            "knock it down further",
            Assert.Single(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("full"), "", "Ines", Cancel)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Without_any_tolerance_only_the_same_level_passes_and_the_shop_can_state_one()
    {
        await using PieceShop shop = await PieceShop.StartAsync(
            steps: """[ { "name": "knock down", "level": "900 G", "least": "1 min" } ]"""
        );
        string serial = (await shop.MakeAsync(1)).Serial;
        Assert.Contains(
            "the charge is said when it ends",
            Assert
                .Single(await shop.Steps.BeginAsync(Guid.NewGuid(), "knock down", [serial], "", "Ines", Cancel, new ChargeEntry("900 G")))
                .Message,
            StringComparison.Ordinal
        );
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "knock down", [serial], "", "Ines", Cancel));
        shop.Shop.Clock.Advance(TimeSpan.FromMinutes(2));
        Task<IReadOnlyList<Problem>> EndAsync(string charge, string jig = "") =>
            shop.Steps.EndAsync(Guid.NewGuid(), "knock down", [serial], "Ines", Cancel, new ChargeEntry(charge, jig));
        Assert.Contains("state a tolerance", Assert.Single(await EndAsync("905 G")).Message, StringComparison.Ordinal);
        Assert.Empty(
            await shop.Shelf.Rules.KeepAsync(
                Guid.NewGuid(),
                PieceShop.Rules.Replace("\"timeZone\"", "\"chargeTolerance\": \"1 %\", \"timeZone\"", StringComparison.Ordinal),
                "Joss",
                Cancel
            )
        );
        Assert.Contains("rules allow ±1 %", Assert.Single(await EndAsync("915 G")).Message, StringComparison.Ordinal);
        Assert.Contains("read at 1.00 mm", Assert.Single(await EndAsync("905 G", "2 mm")).Allowed, StringComparison.Ordinal);
        Assert.Empty(await EndAsync("905 G"));
        Assert.Equal("knocked down to 905 G at 1.00 mm", MagnetCharge.Told((await shop.Shelf.FindAsync(serial, Cancel))!));
    }

    [Fact]
    public async Task A_charge_has_its_place_and_bad_ones_are_named()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string serial = (await shop.MakeAsync(1)).Serial;
        Assert.Contains(
            "magnets is not done yet",
            Assert.Single(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("full"), "", "Ines", Cancel)).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(
            ["charge", "charger", "pieces"],
            (
                await shop.Magnets.ChargeAsync(
                    Guid.NewGuid(),
                    ["9999-1"],
                    new ChargeEntry("80", "", new string('x', 121)),
                    "",
                    "Ines",
                    Cancel
                )
            )
                .Select(problem => problem.Field)
                .Order()
        );
        Assert.Equal(
            "charge",
            Assert.Single(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel, new ChargeEntry("80"))).Field
        );
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel));
        Assert.Contains(
            (await shop.Steps.BeginAsync(Guid.NewGuid(), "marking", [serial], "I-1", "Ines", Cancel, new ChargeEntry("full"))).Select(
                problem => problem.Message
            ),
            message => message == "magnets are not charged in marking"
        );
        Assert.Equal(
            "charge",
            Assert.Single(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], ChargeEntry.Nothing, "", "Ines", Cancel)).Field
        );
    }

    /// <summary>
    /// The field at the final test against the level: shown without a tolerance, judged with one, and not held against poles read at
    /// another distance.
    /// </summary>
    [Theory]
    [InlineData("", "905 899 902 898 901 895", "", TestResult.Pass, "0.0 % against the charge 900 G at 1.00 mm, shown only")]
    [InlineData("1 %", "905 899 902 898 901 895", "", TestResult.Pass, "allowed ±1 %")]
    [InlineData("1 %", "955 949 952 948 951 945", "", TestResult.Fail, "+5.6 %")]
    [InlineData("", "955 949 952 948 951 945", "", TestResult.Pass, "+5.6 %")]
    [InlineData("1 %", "755 749 752 748 751 745", "2 mm", TestResult.Pass, "not held against poles read at 2.00 mm")]
    public async Task The_final_test_holds_the_poles_against_the_level(
        string tolerance,
        string poles,
        string jig,
        TestResult result,
        string words
    )
    {
        string stated = tolerance.Length > 0 ? $", \"levelTolerance\": \"{tolerance}\"" : "";
        await using PieceShop shop = await PieceShop.StartAsync(steps: $$"""[ { "name": "magnets", "level": "900 G"{{stated}} } ]""");
        string serial = (await shop.MakeAsync(1)).Serial;
        Assert.Empty(await shop.Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel, new ChargeEntry("900 G")));
        FinalTestVerdict verdict = (
            await shop.Test.TestAsync(
                new TestEntry
                {
                    Id = Guid.NewGuid(),
                    Serial = serial,
                    Resistance = "7.80 k",
                    Temperature = "20",
                    Swing = PieceDayTests.Swing(shop),
                    Poles = poles,
                    Jig = jig,
                },
                Cancel
            )
        ).Verdict!;
        TestOutcome outcome = verdict.Outcomes.Single(one => one.What == "charge");
        Assert.Equal(result, outcome.Result);
        Assert.Contains(words, outcome.Words, StringComparison.Ordinal);
        Assert.Equal(result == TestResult.Pass ? "pass" : "fail: charge of the magnets", verdict.Verdict);
    }

    [Fact]
    public async Task Magnets_charged_after_the_final_test_are_tested_again_before_they_leave()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string serial = (await shop.MakeAsync(1)).Serial;
        await shop.ThroughStepsAsync(serial);
        shop.Shop.Clock.Advance(TimeSpan.FromDays(6));
        async Task TestAsync() => Assert.True((
                    await shop.Test.TestAsync(
                        new TestEntry
                        {
                            Id = Guid.NewGuid(),
                            Serial = serial,
                            Resistance = "7.80 k",
                            Temperature = "20",
                            Swing = PieceDayTests.Swing(shop),
                        },
                        Cancel
                    )
                ).Verdict!.Passes);
        await TestAsync();
        Assert.Empty(
            await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("full"), "one pole was weak", "Ines", Cancel)
        );
        Assert.Contains(
            "charged anew after its final test",
            Assert.Single(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [serial], "K-031", "Ines", Cancel)).Message,
            StringComparison.Ordinal
        );
        await TestAsync();
        Assert.Empty(await shop.DispatchService.ShipAsync(Guid.NewGuid(), [serial], "K-031", "Ines", Cancel));
        Assert.Contains(
            "left the shop",
            Assert.Single(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("full"), "", "Ines", Cancel)).Message,
            StringComparison.Ordinal
        );
        Assert.Empty(await shop.Returns.ReturnAsync(Guid.NewGuid(), serial, "weak", "Ines", Cancel));
        Assert.Empty(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry("full"), "came back weak", "Ines", Cancel));
    }

    [Fact]
    public void A_recipes_level_is_read_and_wrong_ones_are_named()
    {
        static string With(string steps) =>
            File.ReadAllText(RepositoryPath.Of("demo/recipes/breakwater-twin.json"))
                .Replace("\"potting\":", $"\"steps\": {steps}, \"potting\":", StringComparison.Ordinal);
        Recipe recipe = RecipeReader
            .Read(
                With(
                    """[ { "name": "magnets", "level": "full" }, { "name": "knock down", "level": "90 mT", "jig": "2 """
                        + """mm", "levelTolerance": "2 %" } ]"""
                )
            )
            .Value!;
        Assert.Equal(["full", "900 G at 2.00 mm ±2 %"], recipe.Steps.Select(step => step.Charge!.Words));
        string[] fields =
        [
            .. RecipeReader
                .Read(
                    With(
                        """[ { "name": "magnets", "level": 80, "jig": "far" }, { "name": "marking", "level": "80 %" }, """
                            + """{ "name": "rest", "levelTolerance": "2 %" }, { "name": "knock", "level": "80 %", "jig": "1 mm" } ]"""
                    )
                )
                .Problems.Select(problem => problem.Field),
        ];
        Assert.Equal(["steps[0].jig", "steps[0].level", "steps[1].level", "steps[2].levelTolerance", "steps[3].jig"], fields.Order());
    }
}
