namespace Coilwright.Workshop.Stock;

/// <summary>What a store must do for the shop's wire.</summary>
public interface IStockRecords
{
    /// <summary>Every spool in order of entry.</summary>
    Task<IReadOnlyList<SpoolRecord>> SpoolsAsync(CancellationToken cancel);

    /// <summary>Adds a spool; false when another one has its label. The same id twice is kept once.</summary>
    Task<bool> AddSpoolAsync(SpoolRecord spool, CancellationToken cancel);

    /// <summary>Readings of every spool in order of entry.</summary>
    Task<IReadOnlyList<SpoolReadingRecord>> SpoolReadingsAsync(CancellationToken cancel);

    /// <summary>Adds a reading; the same id twice is kept once.</summary>
    Task AddSpoolReadingAsync(SpoolReadingRecord reading, CancellationToken cancel);
}
