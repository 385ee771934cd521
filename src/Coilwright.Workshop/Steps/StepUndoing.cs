using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Steps;

/// <summary>Takes back a mix of ink or the newest reading of a bath that was entered wrongly; both lines stay to be read.</summary>
public sealed class StepUndoing(IShopRecords records, PieceService shelf, PottingService potting)
{
    /// <summary>Takes a mix back that no piece is marked with.</summary>
    public async Task<IReadOnlyList<Problem>> UndoMixAsync(Guid id, string label, string reason, string person, CancellationToken cancel)
    {
        List<Problem> problems = ReasonProblems(reason);
        IReadOnlyList<InkMixRecord> found = await records.Steps.FindInkMixesAsync(label.Trim(), cancel).ConfigureAwait(false);
        InkMixRecord? mix = found.FirstOrDefault(one => Same(one.Label, label));
        if (mix is null)
        {
            IReadOnlyList<InkMixRecord> newest = await records.Steps.InkMixesAsync(5, cancel).ConfigureAwait(false);
            problems.Add(new Problem("mix", "there is no such mix", label, Names(newest.Select(one => one.Label), "none was recorded")));
        }
        else if (await MarkedAsync(mix, cancel).ConfigureAwait(false) is { Count: > 0 } marked)
        {
            string message = $"pieces are marked with {mix.Label}: {string.Join(", ", marked)}";
            problems.Add(new Problem("mix", message, mix.Label, "take their marking back first"));
        }

        if (problems.Count == 0)
        {
            DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
            await records
                .Steps.AddStepUndoAsync(new StepUndoRecord(id, mix!.Id, reason.Trim(), person.Trim(), nowUtc), [], cancel)
                .ConfigureAwait(false);
        }

        return problems;
    }

    /// <summary>
    /// Takes the newest reading of a basket's bath back, and with it the holds that it put on the pieces and nobody has lifted.
    /// </summary>
    public async Task<IReadOnlyList<Problem>> UndoReadingAsync(
        Guid id,
        string basket,
        string reason,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = ReasonProblems(reason);
        IReadOnlyList<BasketStatus> going = await potting.GoingAsync(cancel).ConfigureAwait(false);
        BasketStatus? found = going.FirstOrDefault(one => Same(one.Record.Label, basket) || Same(one.Record.Id.ToString(), basket));
        if (found is null)
        {
            problems.Add(
                new Problem("basket", "no such basket is in a bath", basket, Names(going.Select(one => one.Record.Label), "none is"))
            );
        }

        IReadOnlyList<BathReadingRecord> read = found?.ReadingsInForce ?? [];
        BathReadingRecord? newest = read.Count > 1 ? read[^1] : null;
        if (found is not null && newest is null && !found.Undos.Any(one => one.Id == id))
        {
            const string Allowed = "a basket that never went in is taken back itself";
            problems.Add(new Problem("bath", "the bath was not read since the basket went in", found.Record.Label, Allowed));
        }

        if (problems.Count > 0 || newest is null)
        {
            return problems;
        }

        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        string why = $"the bath's reading \"{newest.Typed}\" was taken back: {reason.Trim()}";
        List<PieceEvent> lifted = [];
        foreach (PieceSnapshot life in found!.Pieces.Where(life => IsHeld(life, HoldOf(newest, life))))
        {
            lifted.Add(
                new Undone
                {
                    Id = ReadingChain.IdWithin(id, life.Piece.Serial),
                    PieceId = life.Piece.Id,
                    About = HoldOf(newest, life),
                    Reason = why,
                    Person = person.Trim(),
                    TimeUtc = nowUtc,
                }
            );
        }

        await records
            .Steps.AddStepUndoAsync(new StepUndoRecord(id, newest.Id, reason.Trim(), person.Trim(), nowUtc), lifted, cancel)
            .ConfigureAwait(false);
        return problems;
    }

    /// <summary>Id of the hold that a reading put on a piece.</summary>
    private static Guid HoldOf(BathReadingRecord reading, PieceSnapshot life) => ReadingChain.IdWithin(reading.Id, life.Piece.Serial);

    private static bool IsHeld(PieceSnapshot life, Guid held)
    {
        IReadOnlyList<PieceEvent> inForce = life.History.InForce;
        return inForce.Any(one => one.Id == held) && !inForce.OfType<Lifted>().Any(one => one.HoldId == held);
    }

    private static bool Same(string name, string typed) => string.Equals(name, typed.Trim(), StringComparison.OrdinalIgnoreCase);

    private static string Names(IEnumerable<string> names, string none) => string.Join(", ", names) is { Length: > 0 } list ? list : none;

    private static List<Problem> ReasonProblems(string reason) =>
        reason.Trim().Length > 0 ? [] : [new Problem("reason", "what was entered wrongly?", null, "a few words")];

    private async Task<IReadOnlyList<string>> MarkedAsync(InkMixRecord mix, CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> pieces = await records.Pieces.WithAsync(new PieceQuery(MixId: mix.Id), cancel).ConfigureAwait(false);
        IReadOnlyList<PieceSnapshot> lives = await shelf.LivesAsync(pieces, cancel).ConfigureAwait(false);
        return
        [
            .. lives
                .Where(life => life.History.InForce.OfType<StepBegun>().Any(one => one.MixId == mix.Id))
                .Select(life => life.Piece.Serial),
        ];
    }
}
