using System.CommandLine;
using Coilwright.Application.Printing;
using Coilwright.Input;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Pieces;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Commands;

/// <summary>coilwright paper piece KIND SERIAL: the papers of a piece of the shop.</summary>
internal static class PaperPieceCommand
{
    private const string Label = "label";

    private static readonly string[] s_kinds = [.. PrintPiecePaper.Kinds, Label];

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
                if (pieces.Count == 0 || (pieces.Count > 1 && word != Label && !PrintPiecePaper.OfSeveral.Contains(word)))
                {
                    throw WrongInputException.About("SERIAL", "this paper is of one piece", "one serial");
                }

                if (word == Label)
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
        LoadOption load = await LoadOption.ReadAsync(loadPath, cancel).ConfigureAwait(false);
        PiecePaper paper = await open.Use<PrintPiecePaper>().PrintAsync(kind, pieces, load.Circuit, cancel).ConfigureAwait(false);
        return paper.Sheet ?? throw WrongInputException.About("SERIAL", paper.Why, paper.ToDo);
    }
}
