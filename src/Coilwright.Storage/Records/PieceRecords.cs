using Coilwright.Storage.Model;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Pieces: put together, followed.</summary>
internal sealed partial class PieceRecords(ShopDatabase database) : IPieceRecords
{
    public async Task<string?> AddAsync(PieceRecord piece, IReadOnlyList<PiecePartRecord> parts, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
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
        return await PieceRows.AddPartsAsync(context, alone, parts, cancel);
    }

    public async Task<string?> ExchangePartsAsync(
        IReadOnlyList<PieceEvent> outs,
        IReadOnlyList<PiecePartRecord> ins,
        CancellationToken cancel
    )
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        await PieceRows.AddEventsAsync(context, outs, [], cancel);
        return await PieceRows.AddPartsAsync(context, alone, ins, cancel);
    }

    public async Task AddEventsAsync(IReadOnlyList<PieceEvent> events, IReadOnlyList<PieceReadingRecord> readings, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        await PieceRows.AddEventsAsync(context, events, readings, cancel);
        await alone.CommitAsync(cancel);
    }

    public async Task<Guid?> JoinSetAsync(IReadOnlyList<JoinedSet> joined, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel); // the only writer from here on
        foreach (JoinedSet one in joined)
        {
            if (PieceEventLog.Joining(await PieceRows.EventsAsync(context, [one.PieceId], cancel)) is { } stands && stands.Id != one.Id)
            {
                return one.PieceId; // leaves without a commit: nothing is kept
            }
        }

        await PieceRows.AddEventsAsync(context, joined, [], cancel);
        await alone.CommitAsync(cancel);
        return null;
    }

    public async Task<IReadOnlyList<PiecePartRecord>> PartsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await PieceRows.ManyAsync(pieces, some => context.PieceParts.Where(row => some.Contains(row.PieceId)), cancel);
    }

    public async Task<IReadOnlyList<PieceEvent>> EventsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await PieceRows.EventsAsync(context, pieces, cancel);
    }

    public async Task<IReadOnlyList<PieceReadingRecord>> ReadingsAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await PieceRows.ManyAsync(pieces, some => context.PieceReadings.Where(row => some.Contains(row.PieceId)), cancel);
    }

    public async Task<PieceEvent?> NewestEventAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        PieceEventRow? newest = await context
            .PieceEvents.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .FirstOrDefaultAsync(cancel);
        return newest?.ToEvent();
    }

    public async Task<IReadOnlySet<Guid>> EventsAheadAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        var said = await context
            .PieceEvents.AsNoTracking()
            .Where(one => one.Kind == s_clockRight)
            .Select(one => new { Order = EF.Property<long>(one, ShopContext.EntryOrder), one.TimeUtc })
            .ToListAsync(cancel);
        HashSet<Guid> ahead = [];
        foreach (var one in said)
        {
            foreach (Guid[] some in pieces.Chunk(PieceRows.AtOnce))
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
}
