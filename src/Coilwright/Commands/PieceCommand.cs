using System.CommandLine;
using Coilwright.Analysis.Quantities;
using Coilwright.Formats.Records;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Commands;

/// <summary>
/// coilwright piece propose, make, step, end, charge, hold, lift, undo, exchange, ship, show, and what happens at the test bench and on the
/// way back.
/// </summary>
public static class PieceCommand
{
    public static Command Build(CommandContext desk) =>
        new("piece", "Pieces: put together, through their steps, tested, shipped, and back")
        {
            Propose(desk),
            Make(desk),
            Step(desk),
            End(desk),
            PieceChargeCommand.Build(desk),
            PieceReserveCommand.Build(desk),
            Hold(desk),
            Lift(desk),
            Undo(desk),
            Exchange(desk),
            PieceTestCommand.Build(desk),
            Ship(desk),
            PieceReturnCommand.Return(desk),
            PieceReturnCommand.Examine(desk),
            PieceReturnCommand.Close(desk),
            Show(desk),
            Time(desk),
        };

    private static Command Propose(CommandContext desk)
    {
        Argument<string> recipe = new("RECIPE") { Description = "A recipe of the shop" };
        Option<string> by = new("--by")
        {
            Description = "dcResistance, inductance or turns",
            DefaultValueFactory = _ => QuantityKey.DcResistance,
        };
        by.AcceptOnlyFromAmong([.. CoilService.PairedBy]);
        Option<string> offset = ShopAction.Text("--offset", "By how much the second coil is meant to exceed the first, for example 2%");
        Option<bool> held = new("--held") { Description = "Take held coils too" };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("propose", "Which coils at hand go together best") { recipe, by, offset, held, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                double part = 0;
                if (parsed.GetRequiredValue(offset) is { Length: > 0 } typed)
                {
                    bool read = QuantityParser.TryParse(typed, QuantityKind.Fraction, false, out Entered entered, out string why);
                    if (!read || Math.Abs(entered.Si) > 0.5)
                    {
                        string wrong = why.Length > 0 ? why : "outside what is possible here";
                        throw WrongInputException.About("--offset", wrong, "-50 % to 50 %");
                    }

                    part = entered.Si;
                }

                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                RevisionRecord revision = await open.FindRecipeAsync(parsed.GetRequiredValue(recipe), null, cancel).ConfigureAwait(false);
                IReadOnlyList<CoilAtHand> coils = await open
                    .Services.Pieces.Coils.AtHandAsync(revision.RecipeId, parsed.GetValue(held), cancel)
                    .ConfigureAwait(false);
                (IReadOnlyList<ProposedPiece> pieces, IReadOnlyList<CoilAtHand> left) = CoilService.Propose(
                    RecipeReader.Read(revision.Json).OrRefuse(revision.RecipeName),
                    coils,
                    parsed.GetRequiredValue(by),
                    part
                );
                PieceFormatter.WriteProposal(desk.Output, pieces, left);
                return pieces.Count > 0 ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    private static Command Make(CommandContext desk)
    {
        Option<string> coils = new("--coils") { Description = "batch/tag of each coil, with commas", Required = true };
        Option<string> serial = ShopAction.Text("--serial", "The next one of the shop's pattern unless said"),
            magnets = ShopAction.Text("--magnet-lot", "Lot of the magnets");
        Option<string[]> option =
                new("--option") { Description = "A choice that changes parts and labels only: \"cover: nickel silver\"; may be repeated" },
            lot = new("--lot") { Description = "Lot of another part: \"leads: K-7\"; may be repeated" };
        Option<string> overruled = ShopAction.Text("--overruled", "Why these coils, when others were proposed");
        return ShopAction.Build(
            desk,
            "make",
            "Puts a piece together from coils",
            [coils, serial, magnets, option, lot, overruled],
            async (open, parsed, person, cancel) =>
            {
                (IReadOnlyList<Problem> problems, PieceRecord? piece) = await open
                    .Services.Pieces.Assembly.MakeAsync(
                        new AssemblyEntry
                        {
                            Id = Guid.NewGuid(),
                            Coils = ShopAction.List(parsed.GetRequiredValue(coils)),
                            Serial = parsed.GetRequiredValue(serial),
                            MagnetLot = parsed.GetValue(magnets) ?? "",
                            Options = parsed.GetValue(option) ?? [],
                            Lots = parsed.GetValue(lot) ?? [],
                            Overruled = parsed.GetRequiredValue(overruled),
                            Person = person,
                        },
                        cancel
                    )
                    .ConfigureAwait(false);
                return (
                    problems,
                    piece is null
                        ? ""
                        : CautionFormatter.Below(
                            $"Piece {piece.Serial} from {string.Join(" and ", ShopAction.List(parsed.GetRequiredValue(coils)))}",
                            Cautions.For(Job.Assembly)
                        )
                );
            }
        );
    }

    private static Command Step(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials(),
            step = new("STEP") { Description = "For example magnets, marking; potting goes by basket" };
        Option<string> mix = ShopAction.Text("--mix", "The ink, for marking");
        ChargeOptions charge = new();
        return ShopAction.Build(
            desk,
            "step",
            "Begins a step on pieces; one without a shortest time is done at once",
            [serials, step, mix, .. charge.All],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Steps.BeginAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(step),
                            ShopAction.List(parsed.GetRequiredValue(serials)),
                            parsed.GetRequiredValue(mix),
                            person,
                            cancel,
                            charge.Read(parsed)
                        )
                        .ConfigureAwait(false),
                    await StepStandingAsync(open, parsed.GetRequiredValue(serials), parsed.GetRequiredValue(step), cancel)
                        .ConfigureAwait(false)
                )
        );
    }

    private static Command End(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials(),
            step = new("STEP") { Description = "The step that goes on" };
        ChargeOptions charge = new();
        return ShopAction.Build(desk, "end", "Ends a step", [serials, step, .. charge.All], async (open, parsed, person, cancel) =>
            (
                await open
                    .Services.Pieces.Steps.EndAsync(
                        Guid.NewGuid(),
                        parsed.GetRequiredValue(step),
                        ShopAction.List(parsed.GetRequiredValue(serials)),
                        person,
                        cancel,
                        charge.Read(parsed)
                    )
                    .ConfigureAwait(false),
                await StepStandingAsync(open, parsed.GetRequiredValue(serials), parsed.GetRequiredValue(step), cancel).ConfigureAwait(false)
            )
        );
    }

    private static Command Hold(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> reason = new("--reason") { Description = "Why", Required = true };
        return ShopAction.Build(
            desk,
            "hold",
            "Puts a hold on pieces until a person lifts it",
            [serials, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Steps.HoldAsync(
                            Guid.NewGuid(),
                            ShopAction.List(parsed.GetRequiredValue(serials)),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    await StatusAsync(open, parsed.GetRequiredValue(serials), cancel).ConfigureAwait(false)
                )
        );
    }

    private static Command Lift(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> reason = new("--reason") { Description = "What was found", Required = true };
        return ShopAction.Build(
            desk,
            "lift",
            "Lifts the holds that persons or alarms put on pieces",
            [serials, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Steps.LiftAsync(
                            Guid.NewGuid(),
                            ShopAction.List(parsed.GetRequiredValue(serials)),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    await StatusAsync(open, parsed.GetRequiredValue(serials), cancel).ConfigureAwait(false)
                )
        );
    }

    private static Command Undo(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> reason = new("--reason") { Description = "What was entered wrongly", Required = true };
        return ShopAction.Build(
            desk,
            "undo",
            "Takes back the newest entry of pieces: a step, a test, a hold, a shipment of today",
            [serials, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Undo.UndoAsync(
                            new UndoEntry
                            {
                                Id = Guid.NewGuid(),
                                Serials = ShopAction.List(parsed.GetRequiredValue(serials)),
                                Reason = parsed.GetRequiredValue(reason),
                                Person = person,
                            },
                            cancel
                        )
                        .ConfigureAwait(false),
                    await StatusAsync(open, parsed.GetRequiredValue(serials), cancel).ConfigureAwait(false)
                )
        );
    }

    private static Command Time(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> at = new("--at") { Description = "When it really was, by the shop's clock: \"2026-12-01 10:40\"", Required = true },
            reason = new("--reason") { Description = "Why the time is wrong", Required = true };
        return ShopAction.Build(
            desk,
            "time",
            "Mends the time of the newest entry of pieces, made while the clock was wrong; its holds follow",
            [serials, at, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Times.MendAsync(
                            Guid.NewGuid(),
                            ShopAction.List(parsed.GetRequiredValue(serials)),
                            null,
                            parsed.GetRequiredValue(at),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    await StatusAsync(open, parsed.GetRequiredValue(serials), cancel).ConfigureAwait(false)
                )
        );
    }

    private static Command Exchange(CommandContext desk)
    {
        Argument<string> serial = new("SERIAL") { Description = "The piece" };
        Option<string> old = new("--out") { Description = "Tag of the coil that comes out", Required = true },
            fresh = new("--in") { Description = "batch/tag of the coil that goes in", Required = true },
            reason = new("--reason") { Description = "Why", Required = true };
        return ShopAction.Build(
            desk,
            "exchange",
            "Puts another coil in the place of one: a rewind",
            [serial, old, fresh, reason],
            async (open, parsed, person, cancel) =>
                (
                    await open
                        .Services.Pieces.Assembly.ReplaceCoilAsync(
                            Guid.NewGuid(),
                            parsed.GetRequiredValue(serial),
                            parsed.GetRequiredValue(old),
                            parsed.GetRequiredValue(fresh),
                            parsed.GetRequiredValue(reason),
                            person,
                            cancel
                        )
                        .ConfigureAwait(false),
                    CautionFormatter.Below(
                        await StatusAsync(open, parsed.GetRequiredValue(serial), cancel).ConfigureAwait(false),
                        Cautions.For(Job.Mending)
                    )
                )
        );
    }

    private static Command Ship(CommandContext desk)
    {
        Argument<string> serials = ShopAction.Serials();
        Option<string> to = new("--to") { Description = "Reference of the customer", Required = true };
        return ShopAction.Build(desk, "ship", "Ships pieces that are through", [serials, to], async (open, parsed, person, cancel) =>
            (
                await open
                    .Services.Pieces.DispatchService.ShipAsync(
                        Guid.NewGuid(),
                        ShopAction.List(parsed.GetRequiredValue(serials)),
                        parsed.GetRequiredValue(to),
                        person,
                        cancel
                    )
                    .ConfigureAwait(false),
                CautionFormatter.Below(
                    $"Shipped to {parsed.GetRequiredValue(to)}: {parsed.GetRequiredValue(serials)}",
                    Cautions.For(Job.Handling)
                )
            )
        );
    }

    private static Command Show(CommandContext desk)
    {
        Argument<string> serial = new("SERIAL") { Description = "The piece" };
        Option<bool> json = ShopOptions.Json();
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("show", "The whole life of a piece") { serial, json, shop };
        command.SetAction(
            async (parsed, cancel) =>
            {
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                TracedPiece piece = await open
                    .Services.Pieces.Trace.PieceAsync(parsed.GetRequiredValue(serial), cancel)
                    .ConfigureAwait(false)
                    ?? throw WrongInputException.About("SERIAL", $"there is no piece \"{parsed.GetRequiredValue(serial)}\" in this shop");
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(PieceJson.Write(piece)).ConfigureAwait(false);
                }
                else
                {
                    PieceFormatter.WritePiece(
                        desk.Output,
                        piece,
                        (await open.Services.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone
                    );
                }

                return ExitCode.Done;
            }
        );
        return command;
    }

    /// <summary>How the pieces stand, with the cautions of a step as their recipes have it.</summary>
    private static async Task<string> StepStandingAsync(OpenShop open, string serials, string step, CancellationToken cancel)
    {
        List<string> cautions = [];
        foreach (string serial in ShopAction.List(serials))
        {
            PieceSnapshot? life = await open.Services.Pieces.Shelf.FindAsync(serial, cancel).ConfigureAwait(false);
            cautions.AddRange(life?.Plans.FirstOrDefault(plan => plan.Name == step)?.Cautions ?? []);
        }

        return CautionFormatter.Below(
            await StatusAsync(open, serials, cancel).ConfigureAwait(false),
            [.. cautions.Distinct(StringComparer.Ordinal)]
        );
    }

    internal static async Task<string> StatusAsync(OpenShop open, string serials, CancellationToken cancel)
    {
        List<string> lines = [];
        TimeZoneInfo zone = (await open.Services.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone;
        DateTimeOffset now = await open.Services.Pieces.Shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        Func<Guid, string> customer = await open.Services.Pieces.Shelf.CustomerWordsAsync(cancel).ConfigureAwait(false);
        foreach (string serial in ShopAction.List(serials))
        {
            if (await open.Services.Pieces.Shelf.FindAsync(serial, cancel).ConfigureAwait(false) is { } life)
            {
                lines.Add($"{life.Piece.Serial}: {life.State(now, zone, customer)}");
            }
        }

        return string.Join(Environment.NewLine, lines);
    }
}
