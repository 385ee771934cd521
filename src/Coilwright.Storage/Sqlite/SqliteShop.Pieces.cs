using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Sqlite;

/// <summary>Pieces: put together, followed, found.</summary>
public sealed partial class SqliteShop
{
    /// <summary>Ids asked for at once; SQLite takes many, and plans few better.</summary>
    private const int AtOnce = 400;

    private static readonly string s_joined = PieceEvent.KindOf<JoinedSet>(),
        s_golden = PieceEvent.KindOf<MadeGolden>(),
        s_partOut = PieceEvent.KindOf<PartOut>(),
        s_undone = PieceEvent.KindOf<Undone>(),
        s_clockRight = PieceEvent.KindOf<ClockSaidRight>();

    public async Task<string?> AddPieceAsync(PieceRecord piece, IReadOnlyList<PiecePartRecord> parts, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (await context.Pieces.AnyAsync(row => row.Id == piece.Id, cancel))
        {
            return null;
        }

        if (await context.Pieces.AnyAsync(row => row.Serial == piece.Serial, cancel))
        {
            return piece.Serial;
        }

        context.Add(piece);
        context.Add(new ShopContext.OpenPieceRow(piece.Id));
        await context.SaveChangesAsync(cancel);
        return await AddPartsAsync(context, alone, parts, cancel);
    }

    public async Task<string?> ExchangePartsAsync(
        IReadOnlyList<PieceEvent> outs,
        IReadOnlyList<PiecePartRecord> ins,
        CancellationToken cancel
    )
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        await AddEventsAsync(context, outs, [], cancel);
        return await AddPartsAsync(context, alone, ins, cancel);
    }

    public async Task AddPieceEventsAsync(
        IReadOnlyList<PieceEvent> events,
        IReadOnlyList<PieceReadingRecord> readings,
        CancellationToken cancel
    )
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        await AddEventsAsync(context, events, readings, cancel);
        await alone.CommitAsync(cancel);
    }

    public async Task<Guid?> JoinSetAsync(IReadOnlyList<JoinedSet> joined, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel); // the only writer from here on
        foreach (JoinedSet one in joined)
        {
            if (PieceEventLog.Joining(await EventsAsync(context, [one.PieceId], cancel)) is { } stands && stands.Id != one.Id)
            {
                return one.PieceId; // leaves without a commit: nothing is kept
            }
        }

        await AddEventsAsync(context, joined, [], cancel);
        await alone.CommitAsync(cancel);
        return null;
    }

    public async Task<IReadOnlyList<PieceRecord>> FindPiecesAsync(IReadOnlyList<string> serials, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        List<PieceRecord> found = [];
        foreach (string serial in serials)
        {
            IQueryable<PieceRecord> one = Guid.TryParse(serial, out Guid id)
                ? context.Pieces.Where(row => row.Id == id)
                : context.Pieces.Where(row => row.Serial == serial);
            found.AddRange(await one.AsNoTracking().ToListAsync(cancel));
        }

        return found;
    }

    public async Task<IReadOnlyList<PieceRecord>> OpenPiecesAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await (
            from open in context.OpenPieces
            join piece in context.Pieces on open.PieceId equals piece.Id
            orderby EF.Property<long>(piece, ShopContext.EntryOrder)
            select piece
        )
            .AsNoTracking()
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<PieceRecord>> NewestPiecesAsync(int most, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .Pieces.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<PieceRecord>> PiecesWithAsync(PieceQuery query, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        List<Guid> ids = [];
        if (query.Coils is { } coils)
        {
            foreach (string[] tags in coils.Tags.Chunk(AtOnce))
            {
                ids.AddRange(
                    await context
                        .PieceParts.Where(row => row.BatchId == coils.BatchId && tags.Contains(row.Tag))
                        .Select(row => row.PieceId)
                        .ToListAsync(cancel)
                );
            }
        }
        else
        {
            IQueryable<Guid> wanted = query switch
            {
                { Lot: { } lot } => context.PieceParts.Where(row => row.Lot == lot).Select(row => row.PieceId),
                { BasketId: { } basket } => InForceEvents(context).Where(row => row.BasketId == basket).Select(row => row.PieceId),
                { MixId: { } mix } => InForceEvents(context).Where(row => row.MixId == mix).Select(row => row.PieceId),
                { CustomerId: { } customer } => InForceEvents(context).Where(row => row.CustomerId == customer).Select(row => row.PieceId),
                { RecipeId: { } recipe } => context.Pieces.Where(row => row.RecipeId == recipe).Select(row => row.Id),
                { SetId: { } set } => context.PieceEvents.Where(row => row.Kind == s_joined && row.About == set).Select(row => row.PieceId),
                { SetName: { } name } => context
                    .PieceEvents.FromSql(
                        $"""
                        SELECT * FROM PieceEvents
                        WHERE Kind = {s_joined} AND json_extract(Payload, '$.name') = {name} COLLATE NOCASE
                        """
                    )
                    .Select(row => row.PieceId),
                _ => throw new ArgumentException("Pieces are looked for by one thing.", nameof(query)),
            };
            ids.AddRange(await wanted.ToListAsync(cancel));
        }

        return await ManyAsync(ids, some => context.Pieces.Where(row => some.Contains(row.Id)), cancel);
    }

    public async Task<IReadOnlyList<string>> SerialsLikeAsync(string beginning, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        string after = beginning + "\uffff";
        return await context
            .Pieces.Where(row => string.Compare(row.Serial, beginning) >= 0 && string.Compare(row.Serial, after) < 0)
            .Select(row => row.Serial)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<PiecePartRecord>> PartsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await ManyAsync(pieces, some => context.PieceParts.Where(row => some.Contains(row.PieceId)), cancel);
    }

    public async Task<IReadOnlyList<PieceEvent>> PieceEventsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await EventsAsync(context, pieces, cancel);
    }

    public async Task<IReadOnlyList<PieceReadingRecord>> PieceReadingsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await ManyAsync(pieces, some => context.PieceReadings.Where(row => some.Contains(row.PieceId)), cancel);
    }

    public async Task<IReadOnlySet<(Guid BatchId, string Tag)>> CoilsInPiecesAsync(IReadOnlyList<Guid> batches, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        HashSet<(Guid, string)> found = [];
        foreach (Guid?[] some in batches.Select(id => (Guid?)id).Chunk(AtOnce))
        {
            foreach (
                var row in await InForce(context)
                    .Where(row => some.Contains(row.BatchId))
                    .Select(row => new { row.BatchId, row.Tag })
                    .ToListAsync(cancel)
            )
            {
                found.Add((row.BatchId!.Value, row.Tag));
            }
        }

        return found;
    }

    public async Task<PieceRecord?> GoldenPieceAsync(Guid recipeId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await (
            from made in InForceEvents(context)
            where made.Kind == s_golden
            join piece in context.Pieces on made.PieceId equals piece.Id
            where piece.RecipeId == recipeId
            orderby EF.Property<long>(made, ShopContext.EntryOrder) descending
            select piece
        )
            .AsNoTracking()
            .FirstOrDefaultAsync(cancel);
    }

    public async Task<DateTimeOffset?> NewestPieceTimeAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        DateTimeOffset?[] newest =
        [
            (
                await context
                    .PieceEvents.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
            (
                await context
                    .InkMixes.AsNoTracking()
                    .Where(mix => !context.StepUndos.Any(undo => undo.About == mix.Id))
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
        ];
        return newest.Max(); // a basket has the time of its pieces' events
    }

    public async Task<DateTimeOffset?> NewestRecordTimeAsync(CancellationToken cancel)
    {
        DateTimeOffset? piece = await NewestPieceTimeAsync(cancel);
        await using ShopContext context = Open();
        DateTimeOffset?[] newest =
        [
            piece,
            (
                await context
                    .Readings.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
            (
                await context
                    .BatchEvents.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
            (
                await context
                    .RoomTemperatures.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
        ];
        return newest.Max();
    }

    public async Task<PieceEvent?> NewestEventAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        PieceEventRow? newest = await context
            .PieceEvents.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .FirstOrDefaultAsync(cancel);
        return newest?.ToEvent();
    }

    public async Task<IReadOnlySet<Guid>> EventsAheadAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        var said = await context
            .PieceEvents.AsNoTracking()
            .Where(one => one.Kind == s_clockRight)
            .Select(one => new { Order = EF.Property<long>(one, ShopContext.EntryOrder), one.TimeUtc })
            .ToListAsync(cancel);
        HashSet<Guid> ahead = [];
        foreach (var one in said)
        {
            foreach (Guid[] some in pieces.Chunk(AtOnce))
            {
                var before = await context
                    .PieceEvents.AsNoTracking()
                    .Where(row => some.Contains(row.PieceId) && EF.Property<long>(row, ShopContext.EntryOrder) < one.Order)
                    .Select(row => new { row.Id, row.TimeUtc })
                    .ToListAsync(cancel);
                ahead.UnionWith(before.Where(row => row.TimeUtc > one.TimeUtc).Select(row => row.Id));
            }
        }

        return ahead;
    }

    private static async Task AddEventsAsync(
        ShopContext context,
        IReadOnlyList<PieceEvent> events,
        IReadOnlyList<PieceReadingRecord> readings,
        CancellationToken cancel
    )
    {
        foreach (PieceEvent happened in events)
        {
            if (await context.PieceEvents.AnyAsync(row => row.Id == happened.Id, cancel))
            {
                continue;
            }

            context.Add(PieceEventRow.Of(happened));
            context.AddRange(readings.Where(reading => reading.EventId == happened.Id));
            await context.SaveChangesAsync(cancel); // one by one: the order of entry is the order here
            await FollowAsync(context, happened.PieceId, cancel);
        }
    }

    private static async Task<string?> AddPartsAsync(
        ShopContext context,
        IDbContextTransaction alone,
        IReadOnlyList<PiecePartRecord> parts,
        CancellationToken cancel
    )
    {
        foreach (PiecePartRecord part in parts)
        {
            if (await context.PieceParts.AnyAsync(row => row.Id == part.Id, cancel))
            {
                continue;
            }

            if (
                part.BatchId is not null
                && await InForce(context).AnyAsync(row => row.BatchId == part.BatchId && row.Tag == part.Tag, cancel)
            )
            {
                return part.Tag; // leaves without a commit: nothing is kept
            }

            context.Add(part);
            await context.SaveChangesAsync(cancel);
        }

        await alone.CommitAsync(cancel);
        return null;
    }

    private static async Task<IReadOnlyList<PieceEvent>> EventsAsync(
        ShopContext context,
        IReadOnlyList<Guid> pieces,
        CancellationToken cancel
    ) =>
        [
            .. (await ManyAsync(pieces, some => context.PieceEvents.Where(row => some.Contains(row.PieceId)), cancel)).Select(row =>
                row.ToEvent()
            ),
        ];

    /// <summary>Events that no later one took back.</summary>
    private static IQueryable<PieceEventRow> InForceEvents(ShopContext context) =>
        context.PieceEvents.Where(one =>
            !context.PieceEvents.Any(undo => undo.PieceId == one.PieceId && undo.Kind == s_undone && undo.About == one.Id)
        );

    /// <summary>Parts that no event took out.</summary>
    private static IQueryable<PiecePartRecord> InForce(ShopContext context) =>
        context.PieceParts.Where(part =>
            !context.PieceEvents.Any(gone => gone.PieceId == part.PieceId && gone.Kind == s_partOut && gone.About == part.Id)
        );

    /// <summary>Keeps the list of pieces in the shop in step with their events.</summary>
    private static async Task FollowAsync(ShopContext context, Guid pieceId, CancellationToken cancel)
    {
        bool inShop = PieceEventLog.IsInShop(await EventsAsync(context, [pieceId], cancel)),
            listed = await context.OpenPieces.AnyAsync(row => row.PieceId == pieceId, cancel);
        if (inShop && !listed)
        {
            context.Add(new ShopContext.OpenPieceRow(pieceId));
            await context.SaveChangesAsync(cancel);
        }
        else if (!inShop && listed)
        {
            await context.OpenPieces.Where(row => row.PieceId == pieceId).ExecuteDeleteAsync(cancel);
        }
    }

    private static async Task<IReadOnlyList<T>> ManyAsync<T>(
        IReadOnlyList<Guid> ids,
        Func<Guid[], IQueryable<T>> of,
        CancellationToken cancel
    )
        where T : class
    {
        List<T> found = [];
        foreach (Guid[] some in ids.Distinct().Chunk(AtOnce))
        {
            found.AddRange(
                await of(some).AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel)
            );
        }

        return found;
    }
}
