using Coilwright.Workshop.Batches;

namespace Coilwright.Workshop.Walls;

/// <summary>On which winder and from which spool a coil was wound: what was noted at its beginning, else what the batch says.</summary>
internal sealed class CoilSources
{
    private readonly Dictionary<Guid, (BatchRecord Batch, IReadOnlyList<BatchEventRecord> InForce, Dictionary<string, string> Machines)> _batches = [];

    public static async Task<CoilSources> ReadAsync(IShopRecords records, IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        CoilSources sources = new();
        foreach (BatchRecord batch in batches)
        {
            IReadOnlyList<BatchEventRecord> inForce = new BatchHistory(batch, await records.BatchEventsAsync(batch.Id, cancel).ConfigureAwait(false), new Dictionary<string, DateTimeOffset>()).InForce;
            Dictionary<string, string> machines = new(StringComparer.Ordinal);
            foreach (BatchEventRecord begun in inForce.Where(one => one.Kind == BatchEventKind.Begun && one.Machine.Length > 0))
            {
                machines[begun.Tag] = begun.Machine;
            }

            sources._batches.Add(batch.Id, (batch, inForce, machines));
        }

        return sources;
    }

    public string MachineOf(ChartReading reading) => _batches[reading.BatchId].Machines.GetValueOrDefault(reading.Tag, _batches[reading.BatchId].Batch.Machine);

    public string SpoolOf(ChartReading reading) => BatchHistory.SpoolAt(_batches[reading.BatchId].Batch, _batches[reading.BatchId].InForce, reading.TimeUtc);
}
