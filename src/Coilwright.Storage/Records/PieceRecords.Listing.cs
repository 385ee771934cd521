using Coilwright.Storage.Model;
using Coilwright.Workshop.Pieces;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Pieces: the list of those in the shop, held against their events.</summary>
internal sealed partial class PieceRecords
{
    public async Task<IReadOnlyList<PieceRecord>> MislistedAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await PieceRows.MislistedAsync(context, cancel);
    }

    public async Task ListAgainAsync(IReadOnlyList<Guid> pieces, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        foreach (Guid piece in pieces)
        {
            await PieceRows.FollowAsync(context, piece, cancel);
        }

        await alone.CommitAsync(cancel);
    }
}
