using Coilwright.Storage.Model;
using Coilwright.Workshop;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Exports;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.People;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Secrets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Records;

/// <summary>A shop's records in one open database. Safe for several callers at once; writers wait for each other.</summary>
public sealed class ShopRecords : IShopRecords, IAsyncDisposable
{
    private readonly ShopDatabase _database;

    internal ShopRecords(ShopDatabase database)
    {
        _database = database;
        Recipes = new RecipeRecords(database);
        Batches = new BatchRecords(database);
        Summaries = new BatchSummaryRecords(database);
        Readings = new ReadingRecords(database);
        Room = new RoomRecords(database);
        Machines = new MachineRecords(database);
        Stock = new StockRecords(database);
        Pieces = new PieceRecords(database);
        Steps = new StepRecords(database);
        Customers = new CustomerRecords(database);
        Rules = new RulesRecords(database);
        Learning = new LearningRecords(database);
        People = new PeopleRecords(database);
        Secrets = new SecretRecords(database);
    }

    public IRecipeRecords Recipes { get; }

    public IBatchRecords Batches { get; }

    public IBatchSummaryRecords Summaries { get; }

    public IReadingRecords Readings { get; }

    public IRoomRecords Room { get; }

    public IMachineRecords Machines { get; }

    public IStockRecords Stock { get; }

    public IPieceRecords Pieces { get; }

    public IStepRecords Steps { get; }

    public ICustomerRecords Customers { get; }

    public IRulesRecords Rules { get; }

    public IShopTransfer Transfer => _database.Transfer;

    public ILearningRecords Learning { get; }

    public IPeopleRecords People { get; }

    public ISecretRecords Secrets { get; }

    public IShopBackups Backups => _database.Backups;

    public async Task<string> ShopNameAsync(CancellationToken cancel)
    {
        await using ShopContext context = _database.Open();
        return await context.Shop.Select(row => row.Name).SingleAsync(cancel);
    }

    public async Task<DateTimeOffset?> NewestPieceTimeAsync(CancellationToken cancel)
    {
        await using ShopContext context = _database.Open();
        DateTimeOffset?[] newest =
        [
            (
                await context
                    .PieceEvents.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
            (
                await context
                    .InkMixes.AsNoTracking()
                    .Where(mix => !context.StepUndos.Any(undo => undo.About == mix.Id))
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
        ];
        return newest.Max(); // a basket has the time of its pieces' events
    }

    public async Task<DateTimeOffset?> NewestRecordTimeAsync(CancellationToken cancel)
    {
        DateTimeOffset? piece = await NewestPieceTimeAsync(cancel);
        await using ShopContext context = _database.Open();
        DateTimeOffset?[] newest =
        [
            piece,
            (
                await context
                    .Readings.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
            (
                await context
                    .BatchEvents.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
            (
                await context
                    .RoomTemperatures.AsNoTracking()
                    .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
                    .FirstOrDefaultAsync(cancel)
            )?.TimeUtc,
        ];
        return newest.Max();
    }

    /// <summary>Closes the database.</summary>
    public ValueTask DisposeAsync() => _database.DisposeAsync();

    /// <summary>Lets the order of entry go on after rows that were copied in with theirs.</summary>
    internal Task FollowOrderAsync(ShopContext context, IReadOnlyList<string> tables, CancellationToken cancel) =>
        _database.FollowOrderAsync(context, tables, cancel);

    internal ShopContext Open() => _database.Open();
}
