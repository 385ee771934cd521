namespace Coilwright.Workshop.Readings;

/// <summary>The ids of the readings of one entry, correction or undo, made from its own: sent again it gives the same ones.</summary>
/// <param name="entry">The client-made id; the first reading bears it.</param>
internal sealed class EntryIds(Guid entry)
{
    private readonly HashSet<Guid> _given = [];

    /// <summary>The id of the next reading.</summary>
    /// <param name="quantity">Its quantity.</param>
    /// <param name="old">The reading whose place it takes.</param>
    public Guid Next(string quantity, Guid old)
    {
        Guid id = _given.Count == 0 ? entry : ReadingChain.IdWithin(entry, quantity);
        id = _given.Contains(id) ? ReadingChain.IdWithin(entry, $"{old:N}") : id;
        _given.Add(id);
        return id;
    }

    /// <summary>True when a reading is of the entry with this id.</summary>
    public static bool Contain(Guid entry, ReadingRecord reading) =>
        reading.Id == entry
        || reading.Id == ReadingChain.IdWithin(entry, reading.Quantity)
        || (reading.Supersedes is { } old && reading.Id == ReadingChain.IdWithin(entry, $"{old:N}"));
}
