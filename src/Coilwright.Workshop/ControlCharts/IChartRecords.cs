using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>What a store does for charts. Any store answers through its readings; one that can read fewer of them should.</summary>
public interface IChartRecords
{
    /// <summary>Every reading of a batch in order of entry, superseded ones too.</summary>
    Task<IReadOnlyList<ReadingRecord>> OfBatchAsync(Guid batchId, CancellationToken cancel);

    /// <summary>One reading in force for each coil, in the order in which the coils were first entered.</summary>
    /// <remarks>A coil first entered before the window and corrected within it stands where it was corrected.</remarks>
    async Task<IReadOnlyList<ChartReading>> ForChartAsync(ChartQuery query, CancellationToken cancel)
    {
        ChartWalk walk = new(query);
        foreach (Guid batch in query.Batches)
        {
            walk.Open(batch);
            foreach (
                ReadingRecord reading in (await OfBatchAsync(batch, cancel).ConfigureAwait(false))
                    .Reverse()
                    .Where(reading => reading.Quantity == query.Quantity)
            )
            {
                walk.Take(
                    new ChartRow(
                        reading.TimeUtc.UtcTicks,
                        reading.Id,
                        reading.Tag,
                        reading.Si,
                        reading.TemperatureC,
                        reading.AtHz,
                        reading.Person,
                        reading.TimeUtc,
                        reading.Supersedes,
                        reading.Withdraws
                    )
                );
            }
        }

        return walk.Coils();
    }
}
