using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>A batch by its stored numbers alone: what is left to show when its recipe gives no limits to judge by.</summary>
/// <param name="Batch">The record.</param>
/// <param name="Revision">The revision it stands on, as stored.</param>
/// <param name="InForce">Readings in force, in order of entry.</param>
public sealed record StoredBatch(BatchRecord Batch, RevisionRecord Revision, IReadOnlyList<StoredReading> InForce);

/// <summary>One reading as stored.</summary>
/// <param name="Tag">Tag that its coil bears now.</param>
/// <param name="Reading">The record.</param>
public sealed record StoredReading(string Tag, ReadingRecord Reading)
{
    /// <summary>How it was understood, with what it is at 20 °C.</summary>
    public string Words => EntryReader.Echo([Reading]);
}
