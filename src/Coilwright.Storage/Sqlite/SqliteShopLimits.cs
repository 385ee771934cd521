using Coilwright.Workshop.Batches;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Sqlite;

/// <summary>What batches are judged against.</summary>
public sealed partial class SqliteShop
{
    public async Task<IReadOnlyList<BatchLimitsRecord>> BatchLimitsAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .BatchLimits.AsNoTracking()
            .Where(row => row.BatchId == batchId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public async Task<bool> TryAddBatchLimitsAsync(IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel)
    {
        try
        {
            await using ShopContext context = Open();
            await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
            foreach (BatchLimitsRecord one in limits)
            {
                if (!await context.BatchLimits.AnyAsync(row => row.BatchId == one.BatchId && row.AtHz == one.AtHz, cancel))
                {
                    context.Add(one);
                    await context.SaveChangesAsync(cancel); // one by one: the order of entry is the order here
                }
            }

            await alone.CommitAsync(cancel);
            return true;
        }
        catch (Exception failure) when (StorageFault.Of(failure) is not null)
        {
            return false;
        }
    }
}
