using Coilwright.Workshop.ControlCharts;

namespace Coilwright.Workshop.Readings;

/// <summary>What a store must do for the readings of coils.</summary>
public interface IReadingRecords : IChartRecords
{
    /// <summary>
    /// Adds a reading, unless its id is already there (harmless) or the reading it supersedes has been superseded already.
    /// </summary>
    Task<AddReading> AddAsync(ReadingRecord reading, CancellationToken cancel) => AddAsync([reading], cancel);

    /// <summary>Adds the readings of one entry, all or none; those that are there already are not added again.</summary>
    /// <returns><see cref="AddReading.Added"/> when at least one was new; otherwise what kept them out.</returns>
    Task<AddReading> AddAsync(IReadOnlyList<ReadingRecord> readings, CancellationToken cancel);
}
