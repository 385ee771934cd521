using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Sqlite;

/// <summary>A shop's records in one open SQLite file. Safe for several callers at once; writers wait for each other.</summary>
public sealed partial class SqliteShop : IShopRecords, IAsyncDisposable
{
    private readonly string _connectionString;
    private readonly DbContextOptions<ShopContext> _options;

    internal SqliteShop(string connectionString)
    {
        _connectionString = connectionString;
        _options = ShopContextOptions.For(connectionString);
    }

    public async Task<string> ShopNameAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Shop.Select(row => row.Name).SingleAsync(cancel);
    }

    public async Task<IReadOnlyList<RevisionRecord>> NewestRevisionsAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        List<RevisionRecord> newest = await context
            .Revisions.AsNoTracking()
            .Where(row => row.Number == context.Revisions.Where(other => other.RecipeId == row.RecipeId).Max(other => other.Number))
            .ToListAsync(cancel);
        return [.. newest.OrderBy(row => row.RecipeName, StringComparer.OrdinalIgnoreCase).ThenBy(row => row.RecipeId)];
    }

    public async Task<IReadOnlyList<RevisionRecord>> RevisionsAsync(Guid recipeId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Revisions.AsNoTracking().Where(row => row.RecipeId == recipeId).OrderBy(row => row.Number).ToListAsync(cancel);
    }

    public async Task<RevisionRecord?> FindRevisionAsync(Guid recipeId, int number, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Revisions.AsNoTracking().SingleOrDefaultAsync(row => row.RecipeId == recipeId && row.Number == number, cancel);
    }

    public async Task<bool> SaveRevisionAsync(RevisionRecord revision, int expectedNewest, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        RevisionRecord? newest = await context
            .Revisions.Where(row => row.RecipeId == revision.RecipeId)
            .OrderByDescending(row => row.Number)
            .FirstOrDefaultAsync(cancel);
        bool replaces = newest is { State: RevisionState.Draft } && revision.Number == newest.Number,
            adds = revision.Number == (newest?.Number ?? 0) + 1;
        if ((newest?.Number ?? 0) != expectedNewest || !(replaces || adds))
        {
            return false;
        }

        if (replaces)
        {
            context.Entry(newest!).CurrentValues.SetValues(revision);
        }
        else
        {
            context.Add(revision);
        }

        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }

    public async Task<IReadOnlyList<BatchRecord>> BatchesAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Batches.AsNoTracking().OrderBy(row => row.BegunUtc).ThenBy(row => row.Name).ToListAsync(cancel);
    }

    public async Task<BatchRecord?> FindBatchAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context.Batches.AsNoTracking().SingleOrDefaultAsync(row => row.Id == batchId, cancel);
    }

    public Task<bool> AddBatchAsync(BatchRecord batch, CancellationToken cancel) => AddBatchAsync(batch, [], cancel);

    public async Task<bool> AddBatchAsync(BatchRecord batch, IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel)
    {
        await using ShopContext context = Open();
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

    public async Task<IReadOnlyList<ReadingRecord>> ReadingsAsync(Guid batchId, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .Readings.AsNoTracking()
            .Where(row => row.BatchId == batchId)
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
    }

    public async Task<AddReading> AddReadingsAsync(IReadOnlyList<ReadingRecord> readings, CancellationToken cancel)
    {
        await using ShopContext context = Open();
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

            context.Add(reading);
            await context.SaveChangesAsync(cancel); // one by one: the order of entry is the order here
            outcome = AddReading.Added;
        }

        await alone.CommitAsync(cancel);
        return outcome;
    }

    public async Task<RoomTemperature?> LatestRoomTemperatureAsync(CancellationToken cancel)
    {
        await using ShopContext context = Open();
        return await context
            .RoomTemperatures.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .FirstOrDefaultAsync(cancel);
    }

    public async Task AddRoomTemperatureAsync(RoomTemperature entry, CancellationToken cancel)
    {
        await using ShopContext context = Open();
        context.Add(entry);
        await context.SaveChangesAsync(cancel);
    }

    /// <summary>Closes the file; the write-ahead log is folded into it when no one else has it open.</summary>
    public ValueTask DisposeAsync()
    {
        using SqliteConnection connection = new(_connectionString);
        SqliteConnection.ClearPool(connection);
        return ValueTask.CompletedTask;
    }

    internal ShopContext Open() => new(_options);

    /// <summary>
    /// Sent twice, a reading gets a second time stamp and perhaps a newer room temperature; what the person entered is the same.
    /// </summary>
    private static bool SaysTheSame(ReadingRecord there, ReadingRecord sent) =>
        ReadingChain.SaysTheSame(there, sent with { TemperatureC = there.TemperatureC });
}
