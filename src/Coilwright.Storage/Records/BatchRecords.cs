using Coilwright.Storage.Model;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Batches, their events, and what their coils are judged against.</summary>
internal sealed class BatchRecords(ShopDatabase database) : IBatchRecords
{
    public async Task<IReadOnlyList<BatchRecord>> AllAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Batches.AsNoTracking().OrderBy(row => row.BegunUtc).ThenBy(row => row.Name).ToListAsync(cancel);
    }

    public async Task<BatchRecord?> FindAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Batches.AsNoTracking().SingleOrDefaultAsync(row => row.Id == batchId, cancel);
    }

    public async Task<IReadOnlyList<BatchRecord>> WithSpoolAsync(string label, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        IQueryable<Guid> later = context
            .BatchEvents.Where(row => row.Spool != "" && EF.Functions.Collate(row.Spool, "NOCASE") == label)
            .Select(row => row.BatchId);
        return await context
            .Batches.AsNoTracking()
            .Where(row => EF.Functions.Collate(row.Spool, "NOCASE") == label || later.Contains(row.Id))
            .OrderBy(row => row.BegunUtc)
            .ToListAsync(cancel);
    }

    public Task<bool> AddAsync(BatchRecord batch, CancellationToken cancel) => AddAsync(batch, [], cancel);

    public async Task<bool> AddAsync(BatchRecord batch, IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        var names = await context.Batches.AsNoTracking().Select(row => new { row.Id, row.Name }).ToListAsync(cancel);
        if (names.Any(row => row.Id == batch.Id))
        {
            return true;
        }

        if (names.Any(row => NameKey.Same(row.Name, batch.Name)))
        {
            return false; // an older file may hold a name twice; from now on none is added
        }

        context.Add(batch);
        await context.SaveChangesAsync(cancel);
        context.AddRange(limits);
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }

    public async Task<IReadOnlyList<BatchEvent>> EventsAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        List<BatchEventRow> rows = await context
            .BatchEvents.AsNoTracking()
            .Where(row => row.BatchId == batchId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
        return [.. rows.Select(row => row.ToEvent())];
    }

    public async Task<IReadOnlyList<CauseFound>> CausesFoundAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        List<BatchEventRow> rows = await context
            .BatchEvents.AsNoTracking()
            .Where(row => row.Kind == nameof(CauseFound) && !context.BatchEvents.Any(undo => undo.Undoes == row.Id))
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
        return [.. rows.Select(row => (CauseFound)row.ToEvent())];
    }

    public async Task<bool> AddEventAsync(BatchEvent happened, CancellationToken cancel)
    {
        BatchEventRow added = BatchEventRow.Of(happened);
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        bool there = await context.BatchEvents.AnyAsync(
            row => row.Id == added.Id || (added.Undoes != null && row.Undoes == added.Undoes),
            cancel
        );
        if (!there)
        {
            context.Add(added);
            await context.SaveChangesAsync(cancel);
            await BatchSummaryRecords.OutdateAsync(context, [added.BatchId], cancel);
            await alone.CommitAsync(cancel);
        }

        return !there;
    }

    public async Task<IReadOnlyList<BatchLimitsRecord>> LimitsAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .BatchLimits.AsNoTracking()
            .Where(row => row.BatchId == batchId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public async Task<bool> TryAddLimitsAsync(IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel)
    {
        try
        {
            await using ShopContext context = database.Open();
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
