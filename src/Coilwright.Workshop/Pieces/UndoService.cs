using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>
/// Takes back what was entered wrongly of pieces: a new event that names the one it undoes, with the reason. Several pieces go together or
/// none of them does.
/// </summary>
public sealed class UndoService(IShopRecords records, PieceService shelf, PottingService potting)
{
    /// <summary>Takes the newest entry of each piece back, or gives every problem and changes nothing.</summary>
    public async Task<IReadOnlyList<Problem>> UndoAsync(UndoEntry entry, CancellationToken cancel)
    {
        List<Problem> problems = [];
        if (entry.Reason.Trim().Length is 0 or > 1000)
        {
            problems.Add(new Problem("reason", "what was entered wrongly?", null, "a few words"));
        }

        IReadOnlyList<PieceSnapshot> lives = await LivesAsync(entry, problems, cancel).ConfigureAwait(false);
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        TimeZoneInfo zone = (await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone;
        IReadOnlySet<Guid>? baskets =
            entry.Basket.Trim().Length == 0
                ? null
                : (await records.Steps.FindBasketsAsync(entry.Basket.Trim(), cancel).ConfigureAwait(false))
                    .Select(basket => basket.Id)
                    .ToHashSet();
        List<PieceEvent> undone = [];
        foreach (PieceSnapshot life in lives.Where(life => !WasSentBefore(entry.Id, life.History)))
        {
            IReadOnlyList<PieceEvent> last = PieceUndo.LastEntry(life.History);
            Problem? refused = Other(life, last, entry.Shown, baskets)
                ?? await RefusalAsync(life, nowUtc, zone, cancel).ConfigureAwait(false);
            problems.AddRange(refused is null ? [] : [refused]);
            undone.AddRange(
                last.Reverse()
                    .Select(one => new Undone
                    {
                        Id = ReadingChain.IdWithin(entry.Id, one.Id.ToString()),
                        PieceId = life.Piece.Id,
                        About = one.Id,
                        Reason = entry.Reason.Trim(),
                        Person = entry.Person.Trim(),
                        TimeUtc = nowUtc,
                    })
            );
        }

        if (problems.Count == 0)
        {
            await records.Pieces.AddEventsAsync(undone, [], cancel).ConfigureAwait(false);
        }

        return problems;
    }

    /// <summary>Why the newest entry of a piece may not be taken back now; null when it may.</summary>
    public async Task<Problem?> RefusalAsync(PieceSnapshot life, DateTimeOffset nowUtc, TimeZoneInfo zone, CancellationToken cancel) =>
        PieceUndo.Refusal(
            new UndoGround(
                life,
                await AlarmsAsync(life, cancel).ConfigureAwait(false),
                await NamesakesAsync(life, cancel).ConfigureAwait(false),
                nowUtc,
                zone
            )
        );

    /// <summary>Sets that bear the name of the set which the piece has just left.</summary>
    private async Task<IReadOnlyList<PieceSet>> NamesakesAsync(PieceSnapshot life, CancellationToken cancel)
    {
        if (PieceUndo.LastEntry(life.History) is not [.., LeftSet left])
        {
            return [];
        }

        IReadOnlyList<PieceRecord> pieces = await records
            .Pieces.WithAsync(new PieceQuery(SetName: left.Name), cancel)
            .ConfigureAwait(false);
        return PieceSet.Among(await shelf.LivesAsync(pieces, cancel).ConfigureAwait(false));
    }

    private static bool WasSentBefore(Guid id, PieceEventLog history) =>
        history.All.OfType<Undone>().Any(one => one.Id == ReadingChain.IdWithin(id, one.About.ToString()));

    private static Problem? Other(PieceSnapshot life, IReadOnlyList<PieceEvent> last, Guid? shown, IReadOnlySet<Guid>? baskets)
    {
        bool sameEvent = shown is not { } id || last.Any(one => one.Id == id),
            sameBasket = baskets is null || last is [StepBegun { BasketId: { } basket }] && baskets.Contains(basket);
        if (sameEvent && sameBasket)
        {
            return null;
        }

        string newest = last.Count > 0 ? PieceUndo.Words(last) : "nothing is left to take back";
        return new Problem(
            "piece",
            $"the newest entry of {life.Piece.Serial} is another one: {newest}",
            life.Piece.Serial,
            "look at the piece again; the newest goes first"
        );
    }

    private async Task<IReadOnlyList<PieceSnapshot>> LivesAsync(UndoEntry entry, List<Problem> problems, CancellationToken cancel)
    {
        if (entry.Basket.Trim().Length == 0 || entry.Serials.Count > 0)
        {
            return await shelf.FindAllAsync(entry.Serials, problems, cancel).ConfigureAwait(false);
        }

        IReadOnlyList<BasketStatus> going = await potting.GoingAsync(cancel).ConfigureAwait(false);
        if (
            going.FirstOrDefault(one => string.Equals(one.Record.Label, entry.Basket.Trim(), StringComparison.OrdinalIgnoreCase)) is
            { } basket
        )
        {
            return basket.Pieces;
        }

        problems.Add(
            new Problem(
                "basket",
                "no such basket is in a bath",
                entry.Basket,
                going.Count > 0 ? string.Join(", ", going.Select(one => one.Record.Label)) : "none is"
            )
        );
        return [];
    }

    /// <summary>Holds that a reading of the bath put on the piece: their ids follow from the reading's.</summary>
    private async Task<IReadOnlySet<Guid>> AlarmsAsync(PieceSnapshot life, CancellationToken cancel)
    {
        HashSet<Guid> alarms = [];
        foreach (Guid basket in life.History.All.OfType<StepBegun>().Select(one => one.BasketId).OfType<Guid>().Distinct())
        {
            alarms.UnionWith(
                (await records.Steps.BathReadingsAsync(basket, cancel).ConfigureAwait(false)).Select(reading =>
                    ReadingChain.IdWithin(reading.Id, life.Piece.Serial)
                )
            );
        }

        return alarms;
    }
}
