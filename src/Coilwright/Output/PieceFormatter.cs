using System.Globalization;
using Coilwright.Input;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Output;

/// <summary>Pieces for people at a terminal.</summary>
internal static class PieceFormatter
{
    public static void WriteProposal(TextWriter writer, IReadOnlyList<ProposedPiece> pieces, IReadOnlyList<CoilAtHand> left)
    {
        if (pieces.Count == 0)
        {
            writer.WriteLine("No coils at hand go together.");
        }

        Table table = new("coils", "at 20 °C", "difference", "hum left (forecast)");
        foreach (ProposedPiece piece in pieces)
        {
            table.Add(
                string.Join(" + ", piece.Coils.Select(coil => coil.Code)),
                string.Join(
                    " + ",
                    piece.Coils.Select(coil => coil.OhmAt20C is { } ohm ? QuantityParser.Format(ohm, QuantityKind.Resistance) : "not read")
                ),
                piece.Difference is { } apart ? string.Create(CultureInfo.InvariantCulture, $"{100 * apart:0.00} %") : "–",
                piece.HumWords
            );
        }

        if (pieces.Count > 0)
        {
            table.Write(writer, "");
        }

        if (left.Count > 0)
        {
            writer.WriteLine($"Left in stock: {string.Join(", ", left.Select(coil => coil.Code))}");
        }
    }

    public static void WriteBoard(TextWriter writer, ClockBoard board)
    {
        string caution = board.ClockDoubt is { } doubt ? $"; caution: {doubt}" : "";
        writer.WriteLine($"In progress at {ShopTime.Words(board.NowUtc, board.Zone)}{caution}");
        if (board.Lines.Count == 0)
        {
            writer.WriteLine("No piece is in the shop.");
        }

        Table table = new("piece", "recipe", "state", "details", "ready to pack");
        foreach (BoardLine line in board.Lines)
        {
            table.Add(
                line.Snapshot.Piece.Serial,
                line.Snapshot.Recipe.Name,
                Word(line.Status.State),
                line.Status.Words,
                line.PackFromUtc is { } from ? ShopTime.Words(from, board.Zone) : ""
            );
        }

        if (board.Lines.Count > 0)
        {
            table.Write(writer, "");
        }

        foreach (BasketStatus basket in board.Baskets)
        {
            string pieces = string.Create(
                CultureInfo.InvariantCulture,
                $"{basket.Pieces.Count} {(basket.Pieces.Count == 1 ? "piece" : "pieces")}"
            );
            string limitOf = KeyLabels.Of(basket.Record.LimitOf.TrimEnd(',')),
                earliest = ShopTime.Words(basket.ToBasket().EarliestOutUtc, board.Zone);
            string limit = string.Create(CultureInfo.InvariantCulture, $"limit {basket.Record.LimitC:0.#} °C ({limitOf})");
            writer.WriteLine(
                $"Basket {basket.Record.Label}: {pieces}, {basket.Record.Kind} lot {basket.Record.Lot}, {limit}, earliest out {earliest}"
            );
        }

        foreach (InkMix mix in board.Mixes.Select(mix => mix.ToMix()))
        {
            writer.WriteLine(
                $"Ink {mix.Label}: {(mix.DiscardUtc > board.NowUtc ? "discard at" : "was to be discarded at")} "
                    + $"{ShopTime.Words(mix.DiscardUtc, board.Zone)}"
            );
        }
    }

    public static string Word(StepState state) =>
        state switch
        {
            StepState.MayMove => "may move",
            StepState.MayEnd => "may end",
            StepState.Running => "running",
            StepState.Late => "late",
            StepState.Held => "held",
            _ => "done",
        };

    public static void WritePiece(TextWriter writer, TracedPiece piece, TimeZoneInfo zone)
    {
        PieceSnapshot life = piece.Snapshot;
        writer.WriteLine($"Piece {life.Piece.Serial}: {life.Recipe.Name}, revision {life.Revision.Letter}, {piece.State}");
        writer.WriteLine(
            $"  put together {ShopTime.Words(life.Piece.TimeUtc, zone)}{By(life.Piece.Person)}"
                + After("; coils chosen because: ", life.Piece.Overruled)
        );
        foreach (TracedCoil coil in piece.Coils)
        {
            string gone = coil.IsOut ? " (taken out)" : "";
            writer.WriteLine(
                $"  {coil.Place}: {coil.Batch.Name}/{coil.Tag}{gone}{Spool(coil)}{After(", ", coil.Machine)}, "
                    + $"{string.Join(" and ", coil.Persons)}; {string.Join(", ", coil.Readings.Select(reading => reading.Typed))}"
            );
        }

        foreach (PiecePartRecord part in life.Parts.Where(part => part.Kind != PartKind.Coil))
        {
            writer.WriteLine($"  {part.Place}: lot {part.Lot}");
        }

        if (MagnetCharge.Told(life) is { Length: > 0 } charge)
        {
            writer.WriteLine($"  magnets: {charge}");
        }

        if (piece.Set is { } set && SetMembership.Of(life) is { } place)
        {
            writer.WriteLine($"  {place.Words}, with {set.OthersWords(life)}");
        }

        foreach (string option in life.Piece.Options.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            writer.WriteLine("  " + option);
        }

        foreach (PieceEvent one in life.History.Lines)
        {
            string late = PieceEventFormatter.Late(one, piece, zone),
                ahead = PieceEventFormatter.Ahead(one, piece),
                back = life.History.IsTakenBack(one) ? " (taken back)" : "";
            writer.WriteLine($"  {ShopTime.Words(one.TimeUtc, zone)} {one.Sentence(piece)}{late}{ahead}{back}{By(one.Person)}");
        }
    }

    public static async Task WriteTraceAsync(TextWriter writer, SearchAnswer answer, OpenShop open, CancellationToken cancel)
    {
        if (answer.Hits.Count == 0)
        {
            string near = answer.Near.Count > 0 ? $" Near it: {string.Join(", ", answer.Near)}." : "";
            await writer.WriteLineAsync($"Nothing in this shop is called \"{answer.Asked}\".{near}").ConfigureAwait(false);
        }
        else if (answer.Hits[0].Match != NameMatch.Name)
        {
            await writer.WriteLineAsync(SearchAnswer.MatchWords(answer.Hits[0].Match, answer.Asked) + ":").ConfigureAwait(false);
        }

        if (answer.LeftOut > 0)
        {
            await writer
                .WriteLineAsync(
                    string.Create(CultureInfo.InvariantCulture, $"{answer.LeftOut:#,##0} more names are not shown: type more of it.")
                )
                .ConfigureAwait(false);
        }

        foreach (TraceHit hit in answer.Hits)
        {
            if (hit.Kind == "piece" && await open.Services.Pieces.Trace.PieceAsync(hit.Name, cancel).ConfigureAwait(false) is { } piece)
            {
                WritePiece(writer, piece, (await open.Services.Pieces.Shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone);
                continue;
            }

            await writer.WriteLineAsync($"{hit.Name}, {hit.Words}: in {Pieces(hit.Pieces.Count)}").ConfigureAwait(false);
            Table table = new("piece", "recipe", "state", "used as");
            foreach (TracedState state in hit.Pieces)
            {
                table.Add(state.Serial, state.Recipe, state.State, state.Through);
            }

            if (hit.Pieces.Count > 0)
            {
                table.Write(writer);
            }

            if (hit.Loose.Count > 0)
            {
                string codes = string.Join(", ", hit.Loose.Select(coil => coil.Code));
                await writer
                    .WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"  in no piece, {hit.Loose.Count:#,##0}: {codes}"))
                    .ConfigureAwait(false);
            }
        }
    }

    private static string Pieces(int count) =>
        count switch
        {
            0 => "no piece",
            1 => "1 piece",
            _ => string.Create(CultureInfo.InvariantCulture, $"{count} pieces"),
        };

    private static string Spool(TracedCoil coil) =>
        coil.Spool.Length == 0 ? "" : $", spool {coil.Spool}{After(" of lot ", coil.Lot)}{After(" (", coil.SpoolDoubt, ")")}";

    private static string By(string person) => After(", ", person);

    /// <summary>A text between its words; nothing where there is none.</summary>
    private static string After(string before, string text, string behind = "") => text.Length > 0 ? before + text + behind : "";
}
