using Coilwright.Storage.Model;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Steps;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Baskets, mixes of ink, and what was taken back of them.</summary>
internal sealed class StepRecords(ShopDatabase database) : IStepRecords
{
    public async Task<IReadOnlyList<BasketRecord>> BasketsAsync(int most, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .Baskets.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<BasketRecord>> FindBasketsAsync(string labelOrLot, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .Baskets.AsNoTracking()
            .Where(row => row.Label == labelOrLot || row.Lot == labelOrLot)
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddBasketAsync(BasketRecord basket, BathReadingRecord first, IReadOnlyList<PieceEvent> pieces, CancellationToken cancel) =>
        database.AddOnceAsync(
            basket,
            row => row.Id == basket.Id,
            cancel,
            async context =>
            {
                context.Add(first);
                await PieceRows.AddEventsAsync(context, pieces, [], cancel);
            }
        );

    public async Task<IReadOnlyList<BathReadingRecord>> BathReadingsAsync(Guid basketId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .BathReadings.AsNoTracking()
            .Where(row => row.BasketId == basketId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddBathReadingAsync(BathReadingRecord reading, IReadOnlyList<PieceEvent> holds, CancellationToken cancel) =>
        database.AddOnceAsync(
            reading,
            row => row.Id == reading.Id,
            cancel,
            context => PieceRows.AddEventsAsync(context, holds, [], cancel)
        );

    public async Task<IReadOnlyList<InkMixRecord>> InkMixesAsync(int most, CancellationToken cancel, bool alsoTakenBack = false)
    {
        await using ShopContext context = database.Open();
        return await context
            .InkMixes.AsNoTracking()
            .Where(mix => alsoTakenBack || !context.StepUndos.Any(undo => undo.About == mix.Id))
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<InkMixRecord>> FindInkMixesAsync(string labelOrLot, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        string literal = labelOrLot
            .Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("%", "\\%", StringComparison.Ordinal)
            .Replace("_", "\\_", StringComparison.Ordinal);
        string within = $"%{literal}%";
        return await database
            .MixesWith(context, labelOrLot, within)
            .AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<StepUndoRecord>> StepUndosAsync(IReadOnlyList<Guid> about, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .StepUndos.AsNoTracking()
            .Where(row => about.Contains(row.About))
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddStepUndoAsync(StepUndoRecord undo, IReadOnlyList<PieceEvent> events, CancellationToken cancel) =>
        database.AddOnceAsync(
            undo,
            row => row.Id == undo.Id || row.About == undo.About,
            cancel,
            context => PieceRows.AddEventsAsync(context, events, [], cancel)
        );

    public async Task<bool> AddInkMixAsync(InkMixRecord mix, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (
            await context.InkMixes.AsNoTracking().SingleOrDefaultAsync(row => row.Id == mix.Id || row.Label == mix.Label, cancel) is
            { } there
        )
        {
            return there.Id == mix.Id;
        }

        context.Add(mix);
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }
}
