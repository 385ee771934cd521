using Coilwright.Storage.Model;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Records;

/// <summary>Pieces: found.</summary>
internal sealed partial class PieceRecords
{
    private static readonly string s_joined = PieceEvent.KindOf<JoinedSet>(),
        s_golden = PieceEvent.KindOf<MadeGolden>(),
        s_clockRight = PieceEvent.KindOf<ClockSaidRight>();

    public async Task<IReadOnlyList<PieceRecord>> FindAsync(IReadOnlyList<string> serials, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
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

    public async Task<IReadOnlyList<PieceRecord>> InShopAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await (
            from open in context.OpenPieces
            join piece in context.Pieces on open.PieceId equals piece.Id
            orderby EF.Property<long>(piece, ShopContext.EntryOrder)
            select piece
        )
            .AsNoTracking()
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<PieceRecord>> NewestAsync(int most, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .Pieces.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<PieceRecord>> WithAsync(PieceQuery query, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        List<Guid> ids = [];
        if (query.Coils is { } coils)
        {
            foreach (string[] tags in coils.Tags.Chunk(PieceRows.AtOnce))
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
                { BasketId: { } basket } => PieceRows
                    .InForceEvents(context)
                    .Where(row => row.BasketId == basket)
                    .Select(row => row.PieceId),
                { MixId: { } mix } => PieceRows.InForceEvents(context).Where(row => row.MixId == mix).Select(row => row.PieceId),
                { CustomerId: { } customer } => PieceRows
                    .InForceEvents(context)
                    .Where(row => row.CustomerId == customer)
                    .Select(row => row.PieceId),
                { RecipeId: { } recipe } => context.Pieces.Where(row => row.RecipeId == recipe).Select(row => row.Id),
                { SetId: { } set } => context.PieceEvents.Where(row => row.Kind == s_joined && row.About == set).Select(row => row.PieceId),
                { SetName: { } name } => database.WithText(context, s_joined, "name", name).Select(row => row.PieceId),
                _ => throw new ArgumentException("Pieces are looked for by one thing.", nameof(query)),
            };
            ids.AddRange(await wanted.ToListAsync(cancel));
        }

        return await PieceRows.ManyAsync(ids, some => context.Pieces.Where(row => some.Contains(row.Id)), cancel);
    }

    public async Task<IReadOnlyList<string>> SerialsLikeAsync(string beginning, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        string after = beginning + "\uffff";
        return await context
            .Pieces.Where(row => string.Compare(row.Serial, beginning) >= 0 && string.Compare(row.Serial, after) < 0)
            .Select(row => row.Serial)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlySet<(Guid BatchId, string Tag)>> CoilsInPiecesAsync(IReadOnlyList<Guid> batches, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        HashSet<(Guid, string)> found = [];
        foreach (Guid?[] some in batches.Select(id => (Guid?)id).Chunk(PieceRows.AtOnce))
        {
            foreach (
                var row in await PieceRows
                    .InForce(context)
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

    public async Task<PieceRecord?> GoldenAsync(Guid recipeId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await (
            from made in PieceRows.InForceEvents(context)
            where made.Kind == s_golden
            join piece in context.Pieces on made.PieceId equals piece.Id
            where piece.RecipeId == recipeId
            orderby EF.Property<long>(made, ShopContext.EntryOrder) descending
            select piece
        )
            .AsNoTracking()
            .FirstOrDefaultAsync(cancel);
    }
}
