using Coilwright.Storage.Model;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Summaries of batches.</summary>
internal sealed class BatchSummaryRecords(ShopDatabase database) : IBatchSummaryRecords
{
    private static readonly string s_underWay = BatchSummaryRow.WordOf(BatchState.UnderWay),
        s_unreadable = BatchSummaryRow.WordOf(null);

    /// <summary>Takes the summaries of batches away in the unit of work in which a record was added to them.</summary>
    public static async Task OutdateAsync(ShopContext context, IEnumerable<Guid> batchIds, CancellationToken cancel)
    {
        foreach (Guid batchId in batchIds.Distinct())
        {
            await context.BatchSummaries.Where(row => row.BatchId == batchId).ExecuteDeleteAsync(cancel);
        }
    }

    public async Task<IReadOnlyList<BatchRecord>> MissingAsync(int most, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await Missing(context).OrderByDescending(batch => batch.BegunUtc).Take(most).ToListAsync(cancel);
    }

    public async Task<int> MissingCountAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Batches.CountAsync(cancel) - await Made(context).CountAsync(cancel);
    }

    public async Task<IReadOnlyList<BatchRecord>> OpenAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await Of(context, Made(context).Where(row => row.State == s_underWay || row.State == s_unreadable || row.Hold > 0))
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<BatchRecord>> UnreadableAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await Of(context, Made(context).Where(row => row.State == s_unreadable)).ToListAsync(cancel);
    }

    public async Task<IReadOnlyDictionary<BatchState, int>> CountsAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        var counts = await Made(context)
            .GroupBy(row => row.State)
            .Select(same => new { same.Key, Count = same.Count() })
            .ToListAsync(cancel);
        return counts.Where(one => one.Key != s_unreadable).ToDictionary(one => Enum.Parse<BatchState>(one.Key), one => one.Count);
    }

    public async Task<IReadOnlyList<(BatchRecord Batch, BatchSummary Summary)>> InStateAsync(
        BatchState state,
        int skip,
        int take,
        CancellationToken cancel
    )
    {
        string word = BatchSummaryRow.WordOf(state);
        await using ShopContext context = database.Open();
        var rows = await Made(context)
            .Where(row => row.State == word)
            .Join(context.Batches.AsNoTracking(), row => row.BatchId, batch => batch.Id, (row, batch) => new { batch, row })
            .OrderByDescending(pair => pair.batch.BegunUtc)
            .ThenByDescending(pair => pair.batch.Name)
            .Skip(skip)
            .Take(take)
            .ToListAsync(cancel);
        return [.. rows.Select(pair => (pair.batch, pair.row.ToSummary()))];
    }

    public async Task<KeptSummary?> FindAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return (await Made(context).SingleOrDefaultAsync(row => row.BatchId == batchId, cancel))?.AsKept();
    }

    public async Task<IReadOnlyDictionary<Guid, BatchSummary>> AllAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        List<BatchSummaryRow> rows = await Made(context).ToListAsync(cancel);
        return rows.ToDictionary(row => row.BatchId, row => row.ToSummary());
    }

    public async Task<bool> TryKeepAsync(BatchSummary summary, int readings, int events, CancellationToken cancel)
    {
        try
        {
            await using ShopContext context = database.Open();
            await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
            if (
                await context.Readings.CountAsync(row => row.BatchId == summary.BatchId, cancel) != readings
                || await context.BatchEvents.CountAsync(row => row.BatchId == summary.BatchId, cancel) != events
            )
            {
                return false;
            }

            await OutdateAsync(context, [summary.BatchId], cancel);
            context.Add(BatchSummaryRow.Of(summary));
            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
            return true;
        }
        catch (Exception failure) when (StorageFault.Of(failure) is not null)
        {
            return false;
        }
    }

    private static IQueryable<BatchSummaryRow> Made(ShopContext context) =>
        context.BatchSummaries.AsNoTracking().Where(row => row.Program == ProgramVersion.Text);

    private static IQueryable<BatchRecord> Missing(ShopContext context) =>
        context
            .Batches.AsNoTracking()
            .Where(batch => !context.BatchSummaries.Any(row => row.BatchId == batch.Id && row.Program == ProgramVersion.Text));

    private static IQueryable<BatchRecord> Of(ShopContext context, IQueryable<BatchSummaryRow> rows) =>
        rows.Join(context.Batches.AsNoTracking(), row => row.BatchId, batch => batch.Id, (_, batch) => batch)
            .OrderBy(batch => batch.BegunUtc)
            .ThenBy(batch => batch.Name);
}
