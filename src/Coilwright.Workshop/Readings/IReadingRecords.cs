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
    /// <param name="readings">The readings.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="withTag">
    /// How many readings with their tag the batch is thought to have; where others came meanwhile nothing is added. Null does not ask.
    /// </param>
    /// <returns><see cref="AddReading.Added"/> when at least one was new; otherwise what kept them out.</returns>
    Task<AddReading> AddAsync(IReadOnlyList<ReadingRecord> readings, CancellationToken cancel, int? withTag = null);
}
