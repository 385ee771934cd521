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

namespace Coilwright.Workshop;

/// <summary>
/// What a store must do for the workshop: keep and find records, by what belongs together. It decides nothing. Every write is one unit
/// of work, and durable when it returns.
/// </summary>
public interface IShopRecords
{
    IRecipeRecords Recipes { get; }
    IBatchRecords Batches { get; }
    IBatchSummaryRecords Summaries { get; }
    IReadingRecords Readings { get; }
    IRoomRecords Room { get; }
    IMachineRecords Machines { get; }
    IStockRecords Stock { get; }
    IPieceRecords Pieces { get; }
    IStepRecords Steps { get; }
    ICustomerRecords Customers { get; }
    IRulesRecords Rules { get; }
    ILearningRecords Learning { get; }
    IPeopleRecords People { get; }
    ISecretRecords Secrets { get; }

    /// <summary>All of it, taken out or brought in whole.</summary>
    IShopTransfer Transfer { get; }

    /// <summary>Backups of all of it.</summary>
    IShopBackups Backups { get; }

    Task<string> ShopNameAsync(CancellationToken cancel);

    /// <summary>Time of the newest event of any piece, basket or mix; null when there is none.</summary>
    Task<DateTimeOffset?> NewestPieceTimeAsync(CancellationToken cancel);

    /// <summary>Time of the newest record of any kind that people make every day; null when there is none.</summary>
    Task<DateTimeOffset?> NewestRecordTimeAsync(CancellationToken cancel);
}
