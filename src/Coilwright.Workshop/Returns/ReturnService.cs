using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Returns;

/// <summary>
/// The way back: a piece returns, is measured against its own dispatch, is mended or wound anew, and goes out again. Everything is a new
/// record on the same piece.
/// </summary>
public sealed class ReturnService(IShopRecords records, PieceService shelf, TimeProvider clock)
{
    /// <summary>Books a piece back in with what the customer says.</summary>
    public async Task<IReadOnlyList<Problem>> ReturnAsync(Guid id, string serial, string complaint, string person, CancellationToken cancel)
    {
        List<Problem> problems = [];
        PieceSnapshot? life = await shelf.FindOneAsync(serial, problems, cancel).ConfigureAwait(false);
        if (life is not null && life.History.Shipment is null && !life.History.All.Any(one => one.Id == id))
        {
            problems.Add(
                new Problem(
                    "piece",
                    $"{life.Piece.Serial} {(life.History.IsScrapped ? "was scrapped" : "has not left the shop")}",
                    life.Piece.Serial
                )
            );
        }

        if (complaint.Trim().Length is 0 or > 2000)
        {
            problems.Add(new Problem("complaint", "what is said to be wrong with it?", null, "a few words, as the customer said them"));
        }

        return await AddAsync(
                problems,
                life,
                new Returned
                {
                    Id = id,
                    PieceId = life?.Piece.Id ?? Guid.Empty,
                    Complaint = complaint.Trim(),
                    Person = person.Trim(),
                    TimeUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false),
                },
                [],
                cancel
            )
            .ConfigureAwait(false);
    }

    /// <summary>Measures a piece that came back, and holds the readings against those at dispatch.</summary>
    /// <returns>The problems, or the comparison.</returns>
    public async Task<(IReadOnlyList<Problem> Problems, ReturnFinding? Finding)> ExamineAsync(TestEntry entry, CancellationToken cancel)
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        PieceSnapshot? life = await shelf.FindOneAsync(entry.Serial, problems, cancel).ConfigureAwait(false);
        TestReader reader = new(
            entry,
            life?.Piece.Id ?? Guid.Empty,
            (await RoomInForce.AtAsync(records, clock.GetUtcNow(), cancel).ConfigureAwait(false))?.TemperatureC,
            nowUtc
        );
        IReadOnlyList<PieceReadingRecord> now = reader.Read();
        problems.AddRange(reader.Problems);
        if (life is not null && (life.History.Return is null || !life.IsInShop))
        {
            problems.Add(new Problem("piece", $"{life.Piece.Serial} has not come back", life.Piece.Serial, "book its return first"));
        }

        if (problems.Count > 0)
        {
            return (problems, null);
        }

        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        ReturnFinding finding = ReturnFinding.Of(AtDispatch(life!), now, rules);
        Examined examined = new()
        {
            Id = entry.Id,
            PieceId = life!.Piece.Id,
            Finding = finding.Words,
            Flaws = entry.Flaws.Trim(),
            Person = entry.Person.Trim(),
            TimeUtc = nowUtc,
        };
        await records.Pieces.AddEventsAsync([examined], now, cancel).ConfigureAwait(false);
        return ([], finding);
    }

    /// <summary>Records what was done, what it cost, and the answer; or that the piece is given up.</summary>
    /// <param name="id">Client-made id.</param>
    /// <param name="serial">The piece.</param>
    /// <param name="done">What was done, or why it is given up.</param>
    /// <param name="cost">As the shop writes it; "warranty" is a cost too.</param>
    /// <param name="answer">Text for the customer.</param>
    /// <param name="giveUp">True to scrap it.</param>
    /// <param name="person">Who did it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> CloseAsync(
        Guid id,
        string serial,
        string done,
        string cost,
        string answer,
        bool giveUp,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        PieceSnapshot? life = await shelf.FindOneAsync(serial, problems, cancel).ConfigureAwait(false);
        if (life?.NotHere is { } away && !life.History.All.Any(one => one.Id == id))
        {
            problems.Add(away);
        }

        if (done.Trim().Length is 0 or > 2000)
        {
            problems.Add(new Problem("done", giveUp ? "why is it given up?" : "what was done?", null, "a few words"));
        }

        if (cost.Trim().Length > 60 || answer.Length > 4000)
        {
            problems.Add(
                new Problem(
                    cost.Trim().Length > 60 ? "cost" : "answer",
                    "this is too long",
                    null,
                    "60 letters for the cost, 4,000 for the answer"
                )
            );
        }

        Guid pieceId = life?.Piece.Id ?? Guid.Empty;
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ClosingEvent closed = giveUp
            ? new Scrapped
            {
                Id = id,
                PieceId = pieceId,
                Reason = done.Trim(),
                TimeUtc = nowUtc,
            }
            : new Repaired
            {
                Id = id,
                PieceId = pieceId,
                Done = done.Trim(),
                TimeUtc = nowUtc,
            };
        return await AddAsync(
                problems,
                life,
                closed with
                {
                    Cost = cost.Trim(),
                    Answer = answer.Trim(),
                    Person = person.Trim(),
                },
                [],
                cancel
            )
            .ConfigureAwait(false);
    }

    /// <summary>The comparison of the newest examination with the dispatch before it; null when there is none.</summary>
    public static ReturnFinding? LastFinding(PieceSnapshot life, ShopRules rules) =>
        life.History.InForce.OfType<Examined>().LastOrDefault() is { } examined
            ? ReturnFinding.Of(AtDispatch(life), life.ReadingsOf(examined), rules)
            : null;

    /// <summary>Readings of the test that it left with last.</summary>
    private static IReadOnlyList<PieceReadingRecord> AtDispatch(PieceSnapshot life)
    {
        Shipped? left = life
            .History.InForce.OfType<Shipped>()
            .LastOrDefault(one => one.TimeUtc <= (life.History.Return?.TimeUtc ?? DateTimeOffset.MaxValue));
        Tested? test = life
            .History.InForce.OfType<Tested>()
            .LastOrDefault(one => one.TimeUtc <= (left?.TimeUtc ?? DateTimeOffset.MaxValue));
        return test is null ? [] : life.ReadingsOf(test);
    }

    private async Task<IReadOnlyList<Problem>> AddAsync(
        List<Problem> problems,
        PieceSnapshot? life,
        PieceEvent happened,
        IReadOnlyList<PieceReadingRecord> readings,
        CancellationToken cancel
    )
    {
        if (problems.Count == 0 && life is not null)
        {
            await records.Pieces.AddEventsAsync([happened], readings, cancel).ConfigureAwait(false);
        }

        return problems;
    }
}
