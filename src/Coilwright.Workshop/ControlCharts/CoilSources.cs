using Coilwright.Workshop.Batches;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>On which winder and from which spool the coils of some batches were wound.</summary>
internal sealed class CoilSources
{
    private readonly Dictionary<Guid, CoilOrigins> _batches = [];

    public static async Task<CoilSources> ReadAsync(IShopRecords records, IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        CoilSources sources = new();
        foreach (BatchRecord batch in batches)
        {
            IReadOnlyList<BatchEventRecord> events = await records.BatchEventsAsync(batch.Id, cancel).ConfigureAwait(false);
            sources._batches.Add(
                batch.Id,
                new CoilOrigins(batch, events, await records.ReadingsAsync(batch.Id, cancel).ConfigureAwait(false))
            );
        }

        return sources;
    }

    public string MachineOf(ChartReading reading) => _batches[reading.BatchId].Of(reading.Tag).Machine;

    public string SpoolOf(ChartReading reading) => _batches[reading.BatchId].Of(reading.Tag).Spool;
}
