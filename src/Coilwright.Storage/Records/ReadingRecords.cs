using Coilwright.Storage.Model;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Readings of coils.</summary>
internal sealed class ReadingRecords(ShopDatabase database) : IReadingRecords
{
    public async Task<IReadOnlyList<ReadingRecord>> OfBatchAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .Readings.AsNoTracking()
            .Where(row => row.BatchId == batchId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task<IReadOnlyList<ChartReading>> ForChartAsync(ChartQuery query, CancellationToken cancel) =>
        database.ChartReadingsAsync(query, cancel);

    public async Task<AddReading> AddAsync(IReadOnlyList<ReadingRecord> readings, CancellationToken cancel, int? withTag = null)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        AddReading outcome = AddReading.AlreadyThere;
        foreach (ReadingRecord reading in readings)
        {
            if (await context.Readings.AsNoTracking().SingleOrDefaultAsync(row => row.Id == reading.Id, cancel) is { } there)
            {
                if (!SaysTheSame(there, reading))
                {
                    return AddReading.IdTaken;
                }

                continue;
            }

            if (reading.Supersedes is { } old && await context.Readings.AnyAsync(row => row.Supersedes == old, cancel))
            {
                return AddReading.SupersededByAnother;
            }

            if (outcome != AddReading.Added && withTag is { } known && await WithTagAsync(context, reading, cancel) != known)
            {
                return AddReading.TagTaken;
            }

            context.Add(reading);
            await context.SaveChangesAsync(cancel); // one by one: the order of entry is the order here
            outcome = AddReading.Added;
        }

        await BatchSummaryRecords.OutdateAsync(context, readings.Select(reading => reading.BatchId), cancel);
        await alone.CommitAsync(cancel);
        return outcome;
    }

    private static Task<int> WithTagAsync(ShopContext context, ReadingRecord reading, CancellationToken cancel) =>
        context.Readings.CountAsync(row => row.BatchId == reading.BatchId && row.Tag == reading.Tag, cancel);

    /// <summary>
    /// Sent twice, a reading gets a second time stamp and perhaps a newer room temperature; what the person entered is the same.
    /// </summary>
    private static bool SaysTheSame(ReadingRecord there, ReadingRecord sent) =>
        ReadingChain.SaysTheSame(there, sent with { TemperatureC = there.TemperatureC });
}
