using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Tests.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Sets;

/// <summary>
/// Pieces matched to sets by output and polarity; the ohms of the shop's coils make pieces of 7.87, 7.99, 8.00 and 8.00 kΩ.
/// </summary>
public sealed class SetTests
{
    private static readonly SetPlace[] s_places = [new("neck", "Breakwater twin"), new("bridge", "Breakwater twin")];

    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task The_closest_pieces_at_hand_are_proposed_with_their_reasons_and_the_rest_stays_in_stock()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);

        SetProposal found = await shop.Sets.ProposeAsync(s_places, Cancel);

        Assert.Empty(found.Problems);
        Assert.Equal(SetFinder.Ranked, found.Choices.Count);
        Assert.Equal([serials[2], serials[3]], found.Choices[0].Pieces.Select(piece => piece.Snapshot.Piece.Serial).Order());
        Assert.Equal(0, found.Choices[0].ApartDb, 9);
        Assert.Equal(20 * Math.Log10(8.00 / 7.99), found.Choices[2].ApartDb, 9); // of one recipe, output goes as ohms
        Assert.Equal(found.Choices.Select(choice => choice.ApartDb).Order(), found.Choices.Select(choice => choice.ApartDb));
        Assert.Equal([serials[0], serials[1]], found.Left.Select(life => life.Piece.Serial));
        Assert.All(found.Choices[0].Reasons, reason => Assert.Contains("estimated from resistance", reason, StringComparison.Ordinal));
        Assert.Contains("not tested yet", found.Choices[0].Reasons[0], StringComparison.Ordinal);
        Assert.Matches($"^neck ({serials[2]}|{serials[3]}), bridge ({serials[2]}|{serials[3]})$", found.Choices[0].Names);
        Assert.StartsWith("neck ", found.Choices[0].Reasons[0], StringComparison.Ordinal);
        Assert.Equal("neck and bridge: in phase, hum cancels in part", found.Choices[0].Phase.Words);
    }

    [Fact]
    public async Task What_is_meant_of_a_place_is_taken_off_before_levels_are_compared()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        double meant = 20 * Math.Log10(8.00 / 7.87);
        SetChoice best = (
            await shop.Sets.ProposeAsync(
                [s_places[0], s_places[1] with { Offset = meant.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) }],
                Cancel
            )
        ).Choices[0];
        Assert.Equal(serials[0], best.Pieces[0].Snapshot.Piece.Serial); // the weakest at the neck, a strong one at the bridge
        Assert.Contains(best.Pieces[1].Snapshot.Piece.Serial, serials[2..]);
        Assert.InRange(best.ApartDb, 0, 0.006); // the offset was rounded to 0.01 dB
    }

    [Fact]
    public async Task A_measured_inductance_goes_before_ohms_and_magnets_knocked_down_are_told()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        await shop.ThroughStepsAsync(serials[0]);
        Assert.Empty(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serials[0]], new ChargeEntry("80 %"), "", "Ines", Cancel));
        async Task<SetPiece> TestedAsync(string inductance)
        {
            Assert.True((
                    await shop.Test.TestAsync(
                        new TestEntry
                        {
                            Id = Guid.NewGuid(),
                            Serial = serials[0],
                            Resistance = "7.80 k",
                            Temperature = "20",
                            Inductance = inductance,
                            Swing = PieceDayTests.Swing(shop),
                        },
                        Cancel
                    )
                ).Verdict!.Passes);
            return (await shop.Outputs.OfAsync([(await shop.Shelf.FindAsync(serials[0], Cancel))!], Cancel))[0];
        }

        SetPiece weak = await TestedAsync("4.00 H"),
            strong = await TestedAsync("4.41 H");
        Assert.Equal(1.05, strong.Output.VoltsPerSpeed / weak.Output.VoltsPerSpeed, 9); // L as turns squared
        Assert.Contains("root of the measured inductance", weak.Output.How, StringComparison.Ordinal);
        Assert.Contains("knocked down to 80 % of full, and its recipe does not say so", weak.Caution, StringComparison.Ordinal);
    }

    [Fact] // the flux of a magnet follows its charge, and a string's magnetisation less than that: between the share itself and none of it
    public async Task Output_follows_the_charge_that_the_magnets_were_given_as_a_share_or_as_a_field()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        string serial = serials[0];
        await shop.ThroughStepsAsync(serial);
        async Task<SetPiece> ChargedAsync(string level, string jig = "")
        {
            Assert.Empty(await shop.Magnets.ChargeAsync(Guid.NewGuid(), [serial], new ChargeEntry(level, jig), "too hot", "Ines", Cancel));
            return (await shop.Outputs.OfAsync([(await shop.Shelf.FindAsync(serial, Cancel))!], Cancel))[0];
        }

        SetPiece full = await ChargedAsync("full"),
            half = await ChargedAsync("50 %"),
            most = await ChargedAsync("90 %");
        Assert.InRange(half.Output.VoltsPerSpeed / full.Output.VoltsPerSpeed, 0.45, 0.95);
        Assert.InRange(most.Output.VoltsPerSpeed, half.Output.VoltsPerSpeed * 1.01, full.Output.VoltsPerSpeed * 0.999);
        Assert.EndsWith("magnets at 50 % of full", half.Output.How, StringComparison.Ordinal);

        double mean = Forecaster
            .Predict(
                RecipeModelBuilder.ToModel(full.Snapshot.Recipe),
                null,
                new ForecastOptions { JigM = 2e-3 },
                TestContext.Current.CancellationToken
            )
            .Pickup.Poles.Average(pole => Math.Abs(pole.Field.Value));
        SetPiece byField = await ChargedAsync(
            (mean / 2 * 1e4).ToString("0.000", System.Globalization.CultureInfo.InvariantCulture) + " G",
            "2 mm"
        );
        // half the field is half the charge; the field was rounded
        Assert.Equal(half.Output.VoltsPerSpeed, byField.Output.VoltsPerSpeed, 1e-4 * half.Output.VoltsPerSpeed);
    }

    [Fact]
    public async Task Hum_of_a_set_weighs_every_coil_by_its_area_with_the_cores()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        SetPiece piece = (await shop.Outputs.OfAsync([(await shop.Shelf.FindAsync(serials[0], Cancel))!], Cancel))[0];
        FieldSolution field = Solved(RecipeModelBuilder.ToModel(piece.Snapshot.Recipe));
        Assert.Equal(field.EffectiveAreaM2.Select(Math.Abs), piece.Coils.Select(coil => coil.TurnsArea));
        double bare =
            piece.Snapshot.Recipe.Coils[0].Winding.Turns
            * AirInductance.MeanAreaM2(RecipeModelBuilder.ToModel(piece.Snapshot.Recipe).Coils[0].Bobbin, Wound(piece, 0));
        Assert.True(piece.Coils[0].TurnsArea > 1.1 * bare, $"{piece.Coils[0].TurnsArea} against {bare} without cores");
    }

    private static double Wound(SetPiece piece, int coil) =>
        Forecaster.Predict(RecipeModelBuilder.ToModel(piece.Snapshot.Recipe), null).Coils[coil].Build.Value;

    private static FieldSolution Solved(PickupModel model)
    {
        Prediction prediction = Forecaster.Predict(model, null);
        return new FastFieldEngine().Solve(
            new FieldProblem(
                [
                    .. model.Coils.Select(
                        (coil, c) =>
                            new FieldCoil(
                                coil.Bobbin,
                                prediction.Coils[c].Build.Value,
                                coil.Winding.Turns,
                                coil.Winding.Direction == WindingDirection.CounterClockwise ? 1 : -1,
                                coil.Position,
                                coil.Poles
                            )
                    ),
                ],
                model.Bars,
                model.Sheets,
                ForecastBranch.FrequenciesHz
            ),
            Cancel
        );
    }

    [Fact]
    public async Task A_set_is_kept_with_its_reason_shows_on_its_pieces_and_is_found_by_its_name()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        SetEntry entry = Entry("Lantern 3", serials[3], serials[0]);
        Problem refused = Assert.Single((await shop.Sets.JoinAsync(entry, Cancel)).Problems);
        Assert.StartsWith("closer ones are at hand", refused.Message, StringComparison.Ordinal);
        for (int sent = 0; sent < 2; sent++) // sent twice it is one set
        {
            Assert.Empty((await shop.Sets.JoinAsync(entry with { Why = "the customer heard these two" }, Cancel)).Problems);
        }

        await shop.ReopenAsync();
        TracedPiece piece = (await shop.Trace.PieceAsync(serials[0], Cancel))!;
        Assert.Equal("neck " + serials[3], piece.Set!.OthersWords(piece.Snapshot));
        Assert.Equal(
            ("Lantern 3", "bridge", 0.2, "the customer heard these two"),
            SetMembership.Of(piece.Snapshot) is { } stands ? (stands.Name, stands.Place, stands.OffsetDb, stands.Why) : default
        );
        Assert.Equal(
            "into set Lantern 3, bridge, target level +0.2 dB; chosen because: the customer heard these two",
            Assert.Single(piece.Snapshot.History.InForce).Sentence(piece)
        );
        TraceHit hit = Assert.Single(await shop.Trace.FindAsync("lantern 3", Cancel));
        Assert.Equal(("set", 2), (hit.Kind, hit.Pieces.Count));
        Assert.Equal(["bridge", "neck"], hit.Pieces.Select(state => state.Through));
        Assert.Equal("Lantern 3", Assert.Single((await shop.Sets.InShopAsync(Cancel)).Sets).Name);
        Assert.DoesNotContain((await shop.Sets.ProposeAsync(s_places, Cancel)).Choices, choice =>
            choice.Names.Contains(serials[0], StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_piece_in_two_sets_is_refused_and_every_problem_is_named()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        Assert.Empty(
            (
                await shop.Sets.JoinAsync(
                    Entry("A", serials[2], serials[3]) with
                    {
                        Places = [new SetPlace("neck", serials[2]), new SetPlace("bridge", serials[3])],
                    },
                    Cancel
                )
            ).Problems
        );

        IReadOnlyList<Problem> twice = (await shop.Sets.JoinAsync(Entry("a", serials[0], serials[2]), Cancel)).Problems;
        Assert.Contains(twice, problem => problem.Message == $"{serials[2]} stands in set A, neck already");
        Assert.Contains(twice, problem => problem is { Field: "name", Message: "another set has this name" });
        IReadOnlyList<Problem> wrong = (
            await shop.Sets.JoinAsync(
                new SetEntry
                {
                    Id = Guid.NewGuid(),
                    Name = "",
                    Places =
                    [
                        new SetPlace("neck", "9999-1", "loud"),
                        new SetPlace("Neck", serials[0]),
                        new SetPlace("", serials[1], "20 dB"),
                    ],
                },
                Cancel
            )
        ).Problems;
        Assert.Equal(["name", "offset", "offset", "pieces", "places", "places"], wrong.Select(problem => problem.Field).Order());
        Assert.Contains((await shop.Sets.ProposeAsync([s_places[0]], Cancel)).Problems, problem => problem.Allowed == "2 to 4 places");
        Assert.Contains(
            "a recipe with pieces in no set (Breakwater twin)",
            Assert
                .Single((await shop.Sets.ProposeAsync([s_places[0], new SetPlace("bridge", "Breakwater twine")], Cancel)).Problems)
                .Allowed,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_set_is_broken_with_a_reason_and_its_pieces_are_free_again()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string[] serials = await MakeAsync(shop);
        Assert.Empty(
            (
                await shop.Sets.JoinAsync(
                    new SetEntry
                    {
                        Id = Guid.NewGuid(),
                        Name = "Three",
                        Why = "as ordered",
                        Places = [new("neck", serials[0]), new("middle", serials[1]), new("bridge", serials[2])],
                    },
                    Cancel
                )
            ).Problems
        );
        Assert.Equal("reason", Assert.Single(await shop.Sets.LeaveAsync(Guid.NewGuid(), [serials[1]], " ", "Ines", Cancel)).Field);
        Assert.Empty(await shop.Sets.LeaveAsync(Guid.NewGuid(), [serials[1]], "two are enough", "Ines", Cancel));
        Assert.Equal(2, (await shop.Sets.FindAsync("three", Cancel))!.Members.Count);
        Assert.Empty(await shop.Sets.LeaveAsync(Guid.NewGuid(), [serials[0]], "order cancelled", "Ines", Cancel));
        Assert.Null(await shop.Sets.FindAsync("Three", Cancel)); // one piece is no set
        Assert.Contains(
            "stands in no set",
            Assert.Single(await shop.Sets.LeaveAsync(Guid.NewGuid(), [serials[2]], "again", "Ines", Cancel)).Message,
            StringComparison.Ordinal
        );
        Assert.All((await shop.Trace.FindAsync("Three", Cancel)).Single().Pieces, state => Assert.Equal("left it", state.Through));
        Assert.Empty((await shop.Sets.JoinAsync(Entry("Two", serials[2], serials[3]) with { Why = "as it is" }, Cancel)).Problems);
    }

    [Theory]
    [InlineData("bridge: Harbour bridge +1.5 dB", "bridge", "Harbour bridge", "+1.5 dB")]
    [InlineData("neck:2610-001", "neck", "2610-001", "")]
    [InlineData("bridge: P-1 −0,5 dB", "bridge", "P-1", "−0,5 dB")]
    [InlineData("Harbour bridge", "", "Harbour bridge", "")]
    public void A_place_is_typed_in_one_line(string typed, string name, string of, string offset) =>
        Assert.Equal(new SetPlace(name, of, offset), SetPlaceReader.Line(typed));

    internal static async Task<string[]> MakeAsync(PieceShop shop)
    {
        List<string> serials = [];
        for (int number = 1; number <= 4; number++)
        {
            serials.Add((await shop.MakeAsync(number)).Serial);
        }

        return [.. serials];
    }

    private static SetEntry Entry(string name, string neck, string bridge) =>
        new()
        {
            Id = Guid.NewGuid(),
            Name = name,
            Places = [new SetPlace("neck", neck), new SetPlace("bridge", bridge, "+0.2 dB")],
            Person = "Ines",
        };
}
