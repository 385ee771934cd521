using System.Collections.Concurrent;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>Finds pieces with all that is known of them.</summary>
public sealed class PieceService(IShopRecords records, TimeProvider clock)
{
    private readonly ConcurrentDictionary<(Guid RecipeId, int Number), (RevisionRecord Revision, Recipe Recipe)> _recipes = new();

    /// <summary>The shop's rules.</summary>
    public RuleService Rules { get; } = new(records.Rules, clock);

    /// <summary>The shop's now: never before its newest record.</summary>
    public async Task<DateTimeOffset> NowUtcAsync(CancellationToken cancel) =>
        ShopTime.NowUtc(clock, await records.NewestPieceTimeAsync(cancel).ConfigureAwait(false));

    /// <summary>What is odd about the clock; null when nothing is.</summary>
    public async Task<string?> ClockDoubtAsync(CancellationToken cancel) =>
        ShopTime.Doubt(clock, await records.NewestPieceTimeAsync(cancel).ConfigureAwait(false));

    /// <summary>What is to be asked about the clock before an entry is stored; null when nothing is.</summary>
    public async Task<ClockQuestion?> ClockQuestionAsync(CancellationToken cancel) =>
        ClockQuestion.Of(
            clock.GetUtcNow(),
            await records.NewestPieceTimeAsync(cancel).ConfigureAwait(false),
            await records.NewestRecordTimeAsync(cancel).ConfigureAwait(false),
            (await Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone
        );

    /// <summary>
    /// A person says that the clock is right: records later than it were made by a clock that was ahead, and nothing waits for their time
    /// any more.
    /// </summary>
    public async Task ClockIsRightAsync(string person, CancellationToken cancel)
    {
        if (
            await ClockQuestionAsync(cancel).ConfigureAwait(false) is { IsBehind: true }
            && await records.Pieces.NewestEventAsync(cancel).ConfigureAwait(false) is { } newest
        )
        {
            ClockSaidRight said = new()
            {
                Id = Guid.NewGuid(),
                PieceId = newest.PieceId,
                Person = person.Trim(),
                TimeUtc = clock.GetUtcNow(),
            };
            await records.Pieces.AddEventsAsync([said], [], cancel).ConfigureAwait(false);
        }
    }

    /// <summary>A piece by serial or id; null when there is none.</summary>
    public async Task<PieceSnapshot?> FindAsync(string serial, CancellationToken cancel) =>
        await LivesAsync(await records.Pieces.FindAsync([serial.Trim()], cancel).ConfigureAwait(false), cancel).ConfigureAwait(false)
            is [var life, ..]
            ? life
            : null;

    /// <summary>Pieces by serial; a problem for each that is not there, and for each named twice.</summary>
    internal async Task<IReadOnlyList<PieceSnapshot>> FindAllAsync(
        IReadOnlyList<string> serials,
        List<Problem> problems,
        CancellationToken cancel
    )
    {
        string[] wanted = [.. serials.Select(serial => serial.Trim()).Where(serial => serial.Length > 0)];
        if (wanted.Length == 0)
        {
            problems.Add(new Problem("pieces", "no piece was named", null, "one serial or more"));
        }

        problems.AddRange(
            wanted
                .GroupBy(serial => serial, StringComparer.OrdinalIgnoreCase)
                .Where(same => same.Count() > 1)
                .Select(same => new Problem("pieces", "this piece is named twice", same.Key))
        );
        IReadOnlyList<PieceSnapshot> found = await LivesAsync(
                await records.Pieces.FindAsync([.. wanted.Distinct(StringComparer.OrdinalIgnoreCase)], cancel).ConfigureAwait(false),
                cancel
            )
            .ConfigureAwait(false);
        problems.AddRange(
            wanted
                .Where(serial => !found.Any(life => Same(life, serial)))
                .Select(serial => new Problem("pieces", "there is no such piece", serial))
        );
        return found;
    }

    /// <summary>One piece by serial; a problem and null when it is not there.</summary>
    internal async Task<PieceSnapshot?> FindOneAsync(string serial, List<Problem> problems, CancellationToken cancel) =>
        await FindAllAsync([serial], problems, cancel).ConfigureAwait(false) is [var life, ..] ? life : null;

    /// <summary>Pieces in the shop, in order of making.</summary>
    public async Task<IReadOnlyList<PieceSnapshot>> OpenAsync(CancellationToken cancel) =>
        (await OpenStatusesAsync(cancel).ConfigureAwait(false)).Readable();

    /// <summary>The same for lists: each piece in the shop, or why it cannot be shown.</summary>
    public async Task<IReadOnlyList<RecordStatus<PieceSnapshot>>> OpenStatusesAsync(CancellationToken cancel) =>
        await StatusesAsync(await records.Pieces.InShopAsync(cancel).ConfigureAwait(false), cancel).ConfigureAwait(false);

    /// <summary>These pieces with all that is known of them, in their order.</summary>
    /// <exception cref="UnreadableRecordException">One of them cannot be shown.</exception>
    public Task<IReadOnlyList<PieceSnapshot>> LivesAsync(IReadOnlyList<PieceRecord> pieces, CancellationToken cancel) =>
        LivesAsync(pieces, LifeAsync, cancel);

    /// <summary>The same for lists: each piece, or why it cannot be shown.</summary>
    public Task<IReadOnlyList<RecordStatus<PieceSnapshot>>> StatusesAsync(IReadOnlyList<PieceRecord> pieces, CancellationToken cancel) =>
        LivesAsync(
            pieces,
            (piece, rest) => RecordStatus.ReadAsync("Piece " + piece.Serial, () => LifeAsync(piece, rest), piece.Id),
            cancel
        );

    private async Task<IReadOnlyList<T>> LivesAsync<T>(
        IReadOnlyList<PieceRecord> pieces,
        Func<PieceRecord, Rest, Task<T>> make,
        CancellationToken cancel
    )
    {
        Guid[] ids = [.. pieces.Select(piece => piece.Id)];
        ILookup<Guid, PiecePartRecord> parts = (await records.Pieces.PartsAsync(ids, cancel).ConfigureAwait(false)).ToLookup(part =>
            part.PieceId
        );
        ILookup<Guid, PieceEvent> events = (await records.Pieces.EventsAsync(ids, cancel).ConfigureAwait(false)).ToLookup(one =>
            one.PieceId
        );
        IReadOnlySet<Guid> ahead = await records.Pieces.EventsAheadAsync(ids, cancel).ConfigureAwait(false);
        ILookup<Guid, PieceReadingRecord> readings = (await records.Pieces.ReadingsAsync(ids, cancel).ConfigureAwait(false)).ToLookup(one =>
            one.PieceId
        );
        List<T> made = [];
        foreach (PieceRecord piece in pieces)
        {
            PieceEventLog history = new(piece, [.. events[piece.Id]], ahead);
            made.Add(await make(piece, new Rest([.. parts[piece.Id]], history, [.. readings[piece.Id]], cancel)).ConfigureAwait(false));
        }

        return made;
    }

    private async Task<PieceSnapshot> LifeAsync(PieceRecord piece, Rest rest)
    {
        (RevisionRecord revision, Recipe recipe) = await RecipeAsync(piece.RecipeId, piece.RevisionNumber, rest.Cancel)
            .ConfigureAwait(false);
        return new PieceSnapshot(piece, revision, recipe, rest.Parts, rest.History, rest.Readings);
    }

    /// <summary>What belongs to a piece beside its own record.</summary>
    private sealed record Rest(PiecePartRecord[] Parts, PieceEventLog History, PieceReadingRecord[] Readings, CancellationToken Cancel);

    /// <summary>A released revision, read; kept, since it never changes.</summary>
    public async Task<(RevisionRecord Revision, Recipe Recipe)> RecipeAsync(Guid recipeId, int number, CancellationToken cancel)
    {
        if (_recipes.TryGetValue((recipeId, number), out (RevisionRecord, Recipe) known))
        {
            return known;
        }

        RevisionRecord revision = await records.Recipes.FindRevisionAsync(recipeId, number, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException("A piece stands on a revision that is not there.");
        return _recipes.GetOrAdd((recipeId, number), (revision, ReleasedRecipe.Of(revision)));
    }

    /// <summary>Words for customers' ids.</summary>
    public async Task<Func<Guid, string>> CustomerWordsAsync(CancellationToken cancel)
    {
        Dictionary<Guid, CustomerRecord> all = (await records.Customers.AllAsync(cancel).ConfigureAwait(false)).ToDictionary(customer =>
            customer.Id
        );
        return id => all.TryGetValue(id, out CustomerRecord? customer) ? customer.Words : "a customer that is not known";
    }

    private static bool Same(PieceSnapshot life, string serial) =>
        string.Equals(life.Piece.Serial, serial, StringComparison.OrdinalIgnoreCase)
        || string.Equals(life.Piece.Id.ToString(), serial, StringComparison.OrdinalIgnoreCase);
}
