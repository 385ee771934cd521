using Coilwright.Storage.Model;
using Coilwright.Workshop.Learning;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>What the shop has learnt.</summary>
internal sealed class LearningRecords(ShopDatabase database) : ILearningRecords
{
    public async Task<IReadOnlyList<LearningRecord>> AllAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Learning.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public async Task<bool> AddAsync(LearningRecord record, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        bool decides = record.Act is LearningAct.Accepted or LearningAct.Declined;
        bool taken = await context.Learning.AnyAsync(
            row =>
                row.Number == record.Number
                && (row.Act == record.Act || (decides && (row.Act == LearningAct.Accepted || row.Act == LearningAct.Declined))),
            cancel
        );
        if (!taken)
        {
            context.Add(record);
            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
        }

        return !taken;
    }
}
