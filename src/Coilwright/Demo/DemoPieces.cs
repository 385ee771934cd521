using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Composition;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Demo;

/// <summary>The invented shop's pieces: last week's, one of which came back, and today's in the wax. All of it is made up.</summary>
internal sealed class DemoPieces(ShopServices shop, DemoClock clock, TextWriter output)
{
    private const string Hand = "Ines";

    /// <summary>The shop's own rules and its customers.</summary>
    public async Task EnterShopAsync(CancellationToken cancel)
    {
        Refuse(await shop.Pieces.Shelf.Rules.KeepAsync(Guid.NewGuid(), DemoFiles.Rules, "Joss", cancel).ConfigureAwait(false), "rules");
        Refuse(await shop.Pieces.Customers.AddAsync(Guid.NewGuid(), "K-031", "Pell & Daughter", cancel).ConfigureAwait(false), "customer");
        Refuse(await shop.Pieces.Customers.AddAsync(Guid.NewGuid(), "K-044", "Ferry Lane Music", cancel).ConfigureAwait(false), "customer");
    }

    /// <summary>Last week: the coils at hand are paired, two pieces go through every step and leave, and one comes back.</summary>
    public async Task LastWeekAsync(RevisionRecord recipe, CancellationToken cancel)
    {
        (IReadOnlyList<ProposedPiece> pairs, IReadOnlyList<CoilAtHand> left) = await ProposeAsync(recipe, cancel).ConfigureAwait(false);
        PieceFormatter.WriteProposal(output, pairs, left);
        string[] serials =
        [
            await MakeAsync(pairs[0], cancel).ConfigureAwait(false),
            await MakeAsync(pairs[1], cancel).ConfigureAwait(false),
        ];
        await StepsAsync(serials, cancel).ConfigureAwait(false);
        clock.Advance(TimeSpan.FromHours(25));
        double ohm = pairs[0].Coils.Sum(coil => coil.OhmAt20C ?? 0),
            second = pairs[1].Coils.Sum(coil => coil.OhmAt20C ?? 0);
        FinalTest asked = FinalTestService.Asked(
            (await shop.Pieces.Shelf.RecipeAsync(recipe.RecipeId, recipe.Number, cancel).ConfigureAwait(false)).Recipe,
            [],
            await shop.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)
        );
        string swing = asked.ExpectedSwing < 0 ? "down" : "up";
        await TestAsync(serials[0], ohm, "4.21 H", "2.05", swing, golden: true, cancel).ConfigureAwait(false);
        await TestAsync(serials[1], second, "4.19 H", "2.01", swing, golden: false, cancel).ConfigureAwait(false);
        clock.Advance(TimeSpan.FromDays(4.5));
        Refuse(
            await shop.Pieces.DispatchService.ShipAsync(Guid.NewGuid(), [serials[0]], "K-031", Hand, cancel).ConfigureAwait(false),
            "shipping"
        );
        Refuse(
            await shop.Pieces.DispatchService.ShipAsync(Guid.NewGuid(), [serials[1]], "K-044", Hand, cancel).ConfigureAwait(false),
            "shipping"
        );
        clock.Advance(TimeSpan.FromDays(2));
        Refuse(
            await shop
                .Pieces.Returns.ReturnAsync(Guid.NewGuid(), serials[1], "silent since it was fitted", Hand, cancel)
                .ConfigureAwait(false),
            "return"
        );
        Refuse(
            (
                await shop
                    .Pieces.Returns.ExamineAsync(
                        new TestEntry
                        {
                            Id = Guid.NewGuid(),
                            Serial = serials[1],
                            Resistance = "open",
                            Instrument = "bench meter",
                            Person = Hand,
                        },
                        cancel
                    )
                    .ConfigureAwait(false)
            ).Problems,
            "examination"
        );
        foreach (string serial in serials)
        {
            PieceFormatter.WritePiece(
                output,
                await shop.Pieces.Trace.PieceAsync(serial, cancel).ConfigureAwait(false)
                    ?? throw new InvalidOperationException("The piece just made is gone."),
                TimeZoneInfo.Local
            );
        }
    }

    /// <summary>Today: the next pair is put together and hangs in the wax.</summary>
    public async Task TodayAsync(RevisionRecord recipe, CancellationToken cancel)
    {
        (IReadOnlyList<ProposedPiece> pairs, _) = await ProposeAsync(recipe, cancel).ConfigureAwait(false);
        string serial = await MakeAsync(pairs[0], cancel).ConfigureAwait(false);
        Refuse(
            await shop
                .Pieces.Steps.BeginAsync(
                    Guid.NewGuid(),
                    "magnets",
                    [serial],
                    "",
                    Hand,
                    cancel,
                    new ChargeEntry("full", Charger: "coil charger")
                )
                .ConfigureAwait(false),
            "magnets"
        );
        Refuse(await shop.Pieces.Ink.MixAsync(Guid.NewGuid(), "I-8", "A-12, B-4", "23.5 °C", Hand, cancel).ConfigureAwait(false), "ink");
        clock.Advance(TimeSpan.FromMinutes(20));
        Refuse(
            await shop
                .Pieces.Potting.InAsync(
                    new BasketEntry
                    {
                        Id = Guid.NewGuid(),
                        Label = "K2",
                        Lot = "W-3",
                        Bath = "60 °C",
                        Pieces = [serial],
                        Person = Hand,
                    },
                    cancel
                )
                .ConfigureAwait(false),
            "basket"
        );
        PieceFormatter.WriteBoard(
            output,
            await ClockBoard.ReadAsync(shop.Records.Steps, shop.Pieces.Shelf, shop.Pieces.Potting, cancel).ConfigureAwait(false)
        );
        await output.WriteLineAsync("\nWhat hangs on one spool: trace 0117").ConfigureAwait(false);
        foreach (TraceHit hit in await shop.Pieces.Trace.FindAsync("0117", cancel).ConfigureAwait(false))
        {
            foreach (TracedState state in hit.Pieces)
            {
                await output.WriteLineAsync($"  {state.Serial}  {state.Through}  {state.State}").ConfigureAwait(false);
            }
        }
    }

    private async Task StepsAsync(string[] serials, CancellationToken cancel)
    {
        Refuse(
            await shop
                .Pieces.Steps.BeginAsync(
                    Guid.NewGuid(),
                    "magnets",
                    serials,
                    "",
                    Hand,
                    cancel,
                    new ChargeEntry("full", Charger: "coil charger")
                )
                .ConfigureAwait(false),
            "magnets"
        );
        clock.Advance(TimeSpan.FromMinutes(30));
        Refuse(
            await shop
                .Pieces.Potting.InAsync(
                    new BasketEntry
                    {
                        Id = Guid.NewGuid(),
                        Label = "K1",
                        Lot = "W-3",
                        Bath = "61 °C",
                        Pieces = serials,
                        Person = Hand,
                    },
                    cancel
                )
                .ConfigureAwait(false),
            "basket"
        );
        clock.Advance(TimeSpan.FromMinutes(14));
        Refuse(await shop.Pieces.Potting.OutAsync(Guid.NewGuid(), "K1", Hand, cancel).ConfigureAwait(false), "basket");
        clock.Advance(TimeSpan.FromMinutes(40));
        Refuse(await shop.Pieces.Ink.MixAsync(Guid.NewGuid(), "I-7", "A-11, B-4", "24 °C", Hand, cancel).ConfigureAwait(false), "ink");
        Refuse(
            await shop.Pieces.Steps.BeginAsync(Guid.NewGuid(), "marking", serials, "I-7", Hand, cancel).ConfigureAwait(false),
            "marking"
        );
    }

    private async Task<(IReadOnlyList<ProposedPiece>, IReadOnlyList<CoilAtHand>)> ProposeAsync(
        RevisionRecord recipe,
        CancellationToken cancel
    ) =>
        CoilService.Propose(
            RecipeReader.Read(recipe.Json).OrRefuse(recipe.RecipeName),
            await shop.Pieces.Coils.AtHandAsync(recipe.RecipeId, held: false, cancel).ConfigureAwait(false),
            QuantityKey.DcResistance
        );

    private async Task<string> MakeAsync(ProposedPiece pair, CancellationToken cancel)
    {
        clock.Advance(TimeSpan.FromMinutes(12));
        (IReadOnlyList<Problem> problems, PieceRecord? piece) = await shop
            .Pieces.Assembly.MakeAsync(
                new AssemblyEntry
                {
                    Id = Guid.NewGuid(),
                    Coils = [.. pair.Coils.Select(coil => coil.Code)],
                    MagnetLot = "M-5",
                    Lots = ["leads: C-19"],
                    Options = ["bobbin colour: slate"],
                    Person = Hand,
                },
                cancel
            )
            .ConfigureAwait(false);
        Refuse(problems, "assembly");
        return piece!.Serial;
    }

    private async Task TestAsync(
        string serial,
        double ohm,
        string inductance,
        string quality,
        string swing,
        bool golden,
        CancellationToken cancel
    )
    {
        TestEntry entry = new()
        {
            Id = Guid.NewGuid(),
            Serial = serial,
            Resistance = (ohm / 1000).ToString("0.000", CultureInfo.InvariantCulture) + " k",
            Temperature = "20 °C",
            Inductance = inductance,
            Quality = quality,
            Swing = swing,
            Instrument = "bench meter",
            Person = "Joss",
            Golden = golden,
        };
        (IReadOnlyList<Problem> problems, FinalTestVerdict? verdict) = await shop
            .Pieces.Test.TestAsync(entry, cancel)
            .ConfigureAwait(false);
        Refuse(problems, "final test");
        await output.WriteLineAsync($"  {serial}: {verdict!.Verdict}").ConfigureAwait(false);
    }

    private static void Refuse(IReadOnlyList<Problem> problems, string source)
    {
        if (problems.Count > 0)
        {
            throw new InvalidOperationException($"The demo's own data is wrong: {source}: {ProblemFormatter.Line(problems[0])}");
        }
    }
}
