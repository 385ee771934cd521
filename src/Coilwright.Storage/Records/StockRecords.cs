using Coilwright.Storage.Model;
using Coilwright.Workshop.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Spools and their readings.</summary>
internal sealed class StockRecords(ShopDatabase database) : IStockRecords
{
    public async Task<IReadOnlyList<SpoolRecord>> SpoolsAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Spools.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public async Task<bool> AddSpoolAsync(SpoolRecord spool, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (await context.Spools.AsNoTracking().SingleOrDefaultAsync(row => row.Id == spool.Id, cancel) is { } there)
        {
            return string.Equals(there.Label, spool.Label, StringComparison.OrdinalIgnoreCase);
        }

        if (await context.Spools.AnyAsync(row => row.Label == spool.Label, cancel))
        {
            return false;
        }

        context.Add(spool);
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }

    public async Task<IReadOnlyList<SpoolReadingRecord>> SpoolReadingsAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .SpoolReadings.AsNoTracking()
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddSpoolReadingAsync(SpoolReadingRecord reading, CancellationToken cancel) =>
        database.AddOnceAsync(reading, row => row.Id == reading.Id, cancel);
}
