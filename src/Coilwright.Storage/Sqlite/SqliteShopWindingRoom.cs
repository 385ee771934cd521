using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Sqlite;

/// <summary>Machines, spools and the events of batches.</summary>
public sealed partial class SqliteShop
{
    public async Task<IReadOnlyList<MachineRecord>> MachinesAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Machines.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public async Task AddMachineAsync(MachineRecord machine, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (!await context.Machines.AnyAsync(row => row.Id == machine.Id, cancel))
        {
            context.Add(machine);
            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
        }
    }

    public async Task<IReadOnlyList<SpoolRecord>> SpoolsAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Spools.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public async Task<bool> AddSpoolAsync(SpoolRecord spool, CancellationToken cancel)
    {
        await using ShopContext context = Open();
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
        await using ShopContext context = Open();
        return await context
            .SpoolReadings.AsNoTracking()
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public async Task AddSpoolReadingAsync(SpoolReadingRecord reading, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (!await context.SpoolReadings.AnyAsync(row => row.Id == reading.Id, cancel))
        {
            context.Add(reading);
            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
        }
    }

    public async Task<IReadOnlyList<BatchEvent>> BatchEventsAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        List<BatchEventRow> rows = await context
            .BatchEvents.AsNoTracking()
            .Where(row => row.BatchId == batchId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
        return [.. rows.Select(row => row.ToEvent())];
    }

    public async Task<IReadOnlyList<CauseFound>> CausesFoundAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        List<BatchEventRow> rows = await context
            .BatchEvents.AsNoTracking()
            .Where(row => row.Kind == nameof(CauseFound) && !context.BatchEvents.Any(undo => undo.Undoes == row.Id))
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
        return [.. rows.Select(row => (CauseFound)row.ToEvent())];
    }

    public async Task<IReadOnlyList<BatchRecord>> BatchesWithSpoolAsync(string label, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        IQueryable<Guid> later = context
            .BatchEvents.Where(row => row.Spool != "" && EF.Functions.Collate(row.Spool, "NOCASE") == label)
            .Select(row => row.BatchId);
        return await context
            .Batches.AsNoTracking()
            .Where(row => EF.Functions.Collate(row.Spool, "NOCASE") == label || later.Contains(row.Id))
            .OrderBy(row => row.BegunUtc)
            .ToListAsync(cancel);
    }

    public async Task<bool> AddBatchEventAsync(BatchEvent happened, CancellationToken cancel)
    {
        BatchEventRow added = BatchEventRow.Of(happened);
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        bool there = await context.BatchEvents.AnyAsync(
            row => row.Id == added.Id || (added.Undoes != null && row.Undoes == added.Undoes),
            cancel
        );
        if (!there)
        {
            context.Add(added);
            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
        }

        return !there;
    }
}
