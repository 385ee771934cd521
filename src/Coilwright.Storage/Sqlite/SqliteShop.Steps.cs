using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Sqlite;

/// <summary>Baskets, mixes, customers and the shop's rules.</summary>
public sealed partial class SqliteShop
{
    public async Task<IReadOnlyList<BasketRecord>> BasketsAsync(int most, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .Baskets.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<BasketRecord>> FindBasketsAsync(string labelOrLot, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .Baskets.AsNoTracking()
            .Where(row => row.Label == labelOrLot || row.Lot == labelOrLot)
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddBasketAsync(BasketRecord basket, BathReadingRecord first, IReadOnlyList<PieceEvent> pieces, CancellationToken cancel) =>
        AddOnceAsync(
            basket,
            row => row.Id == basket.Id,
            cancel,
            async context =>
            {
                context.Add(first);
                await AddEventsAsync(context, pieces, [], cancel);
            }
        );

    public async Task<IReadOnlyList<BathReadingRecord>> BathReadingsAsync(Guid basketId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .BathReadings.AsNoTracking()
            .Where(row => row.BasketId == basketId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddBathReadingAsync(BathReadingRecord reading, IReadOnlyList<PieceEvent> holds, CancellationToken cancel) =>
        AddOnceAsync(reading, row => row.Id == reading.Id, cancel, context => AddEventsAsync(context, holds, [], cancel));

    public async Task<IReadOnlyList<InkMixRecord>> InkMixesAsync(int most, CancellationToken cancel, bool alsoTakenBack = false)
    {
        await using ShopContext context = Open();
        return await context
            .InkMixes.AsNoTracking()
            .Where(mix => alsoTakenBack || !context.StepUndos.Any(undo => undo.About == mix.Id))
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<InkMixRecord>> FindInkMixesAsync(string labelOrLot, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        string literal = labelOrLot
            .Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("%", "\\%", StringComparison.Ordinal)
            .Replace("_", "\\_", StringComparison.Ordinal);
        string within = $"%{literal}%";
        return await context
            .InkMixes.AsNoTracking()
            .Where(row => row.Label == labelOrLot || EF.Functions.Like(row.Lots, within, "\\"))
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public async Task<IReadOnlyList<StepUndoRecord>> StepUndosAsync(IReadOnlyList<Guid> about, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .StepUndos.AsNoTracking()
            .Where(row => about.Contains(row.About))
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public Task AddStepUndoAsync(StepUndoRecord undo, IReadOnlyList<PieceEvent> events, CancellationToken cancel) =>
        AddOnceAsync(
            undo,
            row => row.Id == undo.Id || row.About == undo.About,
            cancel,
            context => AddEventsAsync(context, events, [], cancel)
        );

    public async Task<bool> AddInkMixAsync(InkMixRecord mix, CancellationToken cancel)
    {
        await using ShopContext context = Open();
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

    public async Task<IReadOnlyList<CustomerRecord>> CustomersAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Customers.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public async Task<bool> AddCustomerAsync(CustomerRecord customer, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (
            await context
                .Customers.AsNoTracking()
                .FirstOrDefaultAsync(row => row.Id == customer.Id || row.Reference == customer.Reference, cancel) is
            { } there
        )
        {
            return there.Id == customer.Id;
        }

        context.Add(customer);
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }

    public async Task EraseCustomerAsync(Guid id, DateTimeOffset timeUtc, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await context.Database.ExecuteSqlRawAsync("PRAGMA secure_delete = ON", cancel); // the old text is overwritten, not only unlinked
        await context
            .Customers.Where(row => row.Id == id && row.ErasedUtc == null)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Name, "").SetProperty(row => row.ErasedUtc, timeUtc), cancel);
        await context.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)", cancel);
    }

    public async Task<ShopRulesRecord?> NewestRulesAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .Rules.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .FirstOrDefaultAsync(cancel);
    }

    public Task AddRulesAsync(ShopRulesRecord rules, CancellationToken cancel) => AddOnceAsync(rules, row => row.Id == rules.Id, cancel);

    private async Task AddOnceAsync<T>(
        T row,
        System.Linq.Expressions.Expression<Func<T, bool>> same,
        CancellationToken cancel,
        Func<ShopContext, Task>? with = null
    )
        where T : class
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (!await context.Set<T>().AnyAsync(same, cancel))
        {
            context.Add(row);
            await context.SaveChangesAsync(cancel);
            if (with is not null)
            {
                await with(context);
            }

            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
        }
    }
}
