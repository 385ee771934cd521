using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop;

/// <summary>Room temperature as somebody entered it.</summary>
public sealed record RoomTemperature(double TemperatureC, string Typed, string Person, DateTimeOffset TimeUtc);

/// <summary>
/// What a store must do for the workshop: keep and find records. It decides nothing. Every write is durable when it returns.
/// </summary>
public interface IShopRecords
    : IMachineRecords,
        IStockRecords,
        IBatchEventRecords,
        IBatchLimitsRecords,
        IPieceRecords,
        IStepRecords,
        ICustomerRecords,
        IRulesRecords,
        IChartRecords
{
    Task<string> ShopNameAsync(CancellationToken cancel);

    /// <summary>Newest revision of every recipe, by name.</summary>
    Task<IReadOnlyList<RevisionRecord>> NewestRevisionsAsync(CancellationToken cancel);
    Task<IReadOnlyList<RevisionRecord>> RevisionsAsync(Guid recipeId, CancellationToken cancel);
    Task<RevisionRecord?> FindRevisionAsync(Guid recipeId, int number, CancellationToken cancel);

    /// <summary>
    /// Adds a revision or replaces a draft; refuses (false) to touch a released one, or to write when the newest revision is not <paramref
    /// name="expectedNewest"/>.
    /// </summary>
    Task<bool> SaveRevisionAsync(RevisionRecord revision, int expectedNewest, CancellationToken cancel);

    Task<IReadOnlyList<BatchRecord>> BatchesAsync(CancellationToken cancel);
    Task<BatchRecord?> FindBatchAsync(Guid batchId, CancellationToken cancel);

    /// <summary>Adds a batch; a second one with the same id is not added again.</summary>
    /// <returns>False when another batch has its name (<see cref="Entry.NameKey"/>): nothing was added.</returns>
    Task<bool> AddBatchAsync(BatchRecord batch, CancellationToken cancel);

    /// <summary>Adds a batch together with what its coils are judged against, both or neither.</summary>
    /// <returns>False when another batch has its name: nothing was added.</returns>
    Task<bool> AddBatchAsync(BatchRecord batch, IReadOnlyList<BatchLimitsRecord> limits, CancellationToken cancel);

    /// <summary>
    /// Adds a reading, unless its id is already there (harmless) or the reading it supersedes has been superseded already.
    /// </summary>
    Task<AddReading> AddReadingAsync(ReadingRecord reading, CancellationToken cancel) => AddReadingsAsync([reading], cancel);

    /// <summary>Adds the readings of one entry, all or none; those that are there already are not added again.</summary>
    /// <returns><see cref="AddReading.Added"/> when at least one was new; otherwise what kept them out.</returns>
    Task<AddReading> AddReadingsAsync(IReadOnlyList<ReadingRecord> readings, CancellationToken cancel);

    Task<RoomTemperature?> LatestRoomTemperatureAsync(CancellationToken cancel);
    Task AddRoomTemperatureAsync(RoomTemperature entry, CancellationToken cancel);
}

/// <summary>How adding a reading went.</summary>
public enum AddReading
{
    Added,

    /// <summary>The same id was there already, with the same content: sent twice, kept once.</summary>
    AlreadyThere,

    /// <summary>Somebody else superseded that reading first.</summary>
    SupersededByAnother,

    /// <summary>The same id was there already with something else in it; nothing was added or changed.</summary>
    IdTaken,
}
