using Coilwright.Workshop.Machines;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Batches;

/// <summary>Sets a winder up for a batch: the one answer that the winder's page, the printed sheet and the command show.</summary>
public sealed class BatchSetUpService(
    IShopRecords records,
    BatchEventService runs,
    MachineService machines,
    StockService stock,
    TimeProvider clock
)
{
    /// <summary>The set-up of a batch; null when there is no such batch.</summary>
    /// <param name="batchId">The batch.</param>
    /// <param name="machineName">A winder other than the batch's own; null takes its own.</param>
    /// <param name="roomC">Room temperature, °C; null takes the one in force, or the usual one.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<BatchSetUp?> FindAsync(Guid batchId, string? machineName, double? roomC, CancellationToken cancel)
    {
        if (await runs.StatusAsync(batchId, cancel).ConfigureAwait(false) is not { } run)
        {
            return null;
        }

        BatchRecord batch = run.Status.Batch;
        string name = machineName ?? batch.Machine;
        Machine? machine = await machines.FindAsync(name, cancel).ConfigureAwait(false);
        SpoolStatus? spool = run.History.Spool.Length > 0 ? await stock.StatusAsync(run.History.Spool, cancel).ConfigureAwait(false) : null;
        double? known = roomC ?? run.Status.RoomC?.TemperatureC;
        WindingSetUp setUp = run.Plan.ForBatch(
            machine,
            known ?? WindingSetUp.UsualRoomC,
            name,
            run.WantedTurns,
            spool?.Measure?.OhmPerM
        ) with
        {
            Heading = new SheetHeading(
                await records.ShopNameAsync(cancel).ConfigureAwait(false),
                run.Status.RevisionLetter,
                DateOnly.FromDateTime(clock.GetLocalNow().DateTime)
            ),
            Batch = new BatchHeading(
                batch.Name,
                run.Status.Wanted,
                FirstTag: BatchTags.Of(batch, 1),
                LastTag: BatchTags.Of(batch, run.Status.Wanted),
                run.History.Spool,
                SpoolWire: spool?.WireWords ?? "",
                RoomKnown: known is not null
            ),
        };
        return new BatchSetUp(run, setUp, spool);
    }
}
