using System.CommandLine;
using Coilwright.Analysis.Forecasts;
using Coilwright.Input;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pieces;
using Coilwright.Papers.Sheets;
using Coilwright.Web;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Commands;

/// <summary>coilwright paper piece KIND SERIAL: the papers of a piece of the shop.</summary>
internal static class PaperPieceCommand
{
    private static readonly string[] s_kinds = ["spec", "traveller", "wiring", "parts", "certificate", "packing", "repair", "label"];

    public static Command Build(CommandContext desk)
    {
        PaperOptions options = new();
        Argument<string> kind = new("KIND") { Description = string.Join(", ", s_kinds) },
            serial = new("SERIAL") { Description = "The piece; several with commas for certificate, packing and label" };
        kind.AcceptOnlyFromAmong(s_kinds);
        Option<string?> load = new("--load")
        {
            Description = "A load file for the response of the spec sheet; a usual player's load unless said",
            HelpName = "LOAD",
        };
        Option<string?> shop = ShopOptions.Shop();
        Command command = new("piece", "Papers of a piece of the shop: measured values beside the model's")
        {
            kind,
            serial,
            load,
            shop,
            options.Pdf,
            options.Html,
            options.Size,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                options.Check(parsed);
                await using OpenShop open = await OpenShop.OpenAsync(parsed.GetValue(shop), desk, cancel).ConfigureAwait(false);
                List<TracedPiece> pieces = [];
                foreach (string one in ShopAction.List(parsed.GetRequiredValue(serial)))
                {
                    pieces.Add(
                        await open.Services.Pieces.Trace.PieceAsync(one, cancel).ConfigureAwait(false)
                            ?? throw WrongInputException.About("SERIAL", $"there is no piece \"{one}\" in this shop")
                    );
                }

                string word = parsed.GetRequiredValue(kind);
                if (pieces.Count == 0 || (pieces.Count > 1 && word is not ("certificate" or "packing" or "label")))
                {
                    throw WrongInputException.About("SERIAL", "this paper is of one piece", "one serial");
                }

                if (word == "label")
                {
                    return await options
                        .WriteAsync(
                            desk,
                            parsed,
                            LabelPdf.Render([.. pieces.Select(piece => PiecePapers.Label(piece.Snapshot))], options.Paper(parsed)),
                            cancel
                        )
                        .ConfigureAwait(false);
                }

                return await options
                    .WriteAsync(
                        desk,
                        parsed,
                        await SheetAsync(word, pieces, open, parsed.GetValue(load), cancel).ConfigureAwait(false),
                        cancel
                    )
                    .ConfigureAwait(false);
            }
        );
        return command;
    }

    private static async Task<Sheet> SheetAsync(
        string kind,
        List<TracedPiece> pieces,
        OpenShop open,
        string? loadPath,
        CancellationToken cancel
    )
    {
        PieceServices desks = open.Services.Pieces;
        PaperGround ground = new(
            await open.Services.Records.ShopNameAsync(cancel).ConfigureAwait(false),
            await desks.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false),
            await desks.Shelf.NowUtcAsync(cancel).ConfigureAwait(false)
        );
        PieceSnapshot life = pieces[0].Snapshot;
        switch (kind)
        {
            case "spec":
                LoadOption chosen = await LoadOption.ReadAsync(loadPath, cancel).ConfigureAwait(false);
                return PiecePapers.Spec(
                    life,
                    Forecaster.Predict(
                        RecipeModelBuilder.ToModel(life.Recipe),
                        chosen.Circuit,
                        new ForecastOptions { CurvePoints = 300, Strings = false },
                        cancel
                    ),
                    chosen.Circuit,
                    ground
                );
            case "traveller":
                return PiecePapers.TravellerOf(life, ground);
            case "wiring":
                return PiecePapers.WiringOf(life.Recipe, life.Revision.Letter, ground);
            case "parts":
                return PiecePapers.PartsOf(
                    life,
                    Forecaster.Predict(
                        RecipeModelBuilder.ToModel(life.Recipe),
                        load: null,
                        new ForecastOptions { Strings = false },
                        cancel
                    ),
                    ground
                );
            case "certificate":
                List<(PieceSnapshot, FinalTest)> asked = [];
                foreach (TracedPiece piece in pieces)
                {
                    asked.Add(
                        (
                            piece.Snapshot,
                            FinalTestService.Asked(
                                piece.Snapshot.Recipe,
                                await desks.Test.GoldenAsync(piece.Snapshot, cancel).ConfigureAwait(false),
                                ground.Rules
                            )
                        )
                    );
                }

                return PiecePapers.Certificate(pieces.Count == 1 ? life.Piece.Serial : $"{pieces.Count} pieces", asked, ground)
                    ?? throw WrongInputException.About("SERIAL", "a piece among them was never tested", "piece test SERIAL first");
            case "packing":
                return PiecePapers.Packing(
                    pieces[0].Customers.Count > 0
                        ? pieces[0].Customers[^1]
                        : throw WrongInputException.About(
                            "SERIAL",
                            $"{life.Piece.Serial} went to no customer yet",
                            "piece ship SERIAL --to CUSTOMER first"
                        ),
                    [.. pieces.Select(piece => piece.Snapshot)],
                    ground
                );
            default:
                return PiecePapers.Repair(pieces[0], ground)
                    ?? throw WrongInputException.About("SERIAL", $"{life.Piece.Serial} never came back", "piece return SERIAL first");
        }
    }
}
