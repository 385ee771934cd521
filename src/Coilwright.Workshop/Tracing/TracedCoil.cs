using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tracing;

/// <summary>A coil of a piece, back to its wire.</summary>
/// <param name="Batch">Its batch.</param>
/// <param name="Tag">Its tag.</param>
/// <param name="Place">Which coil of the recipe it is.</param>
/// <param name="IsOut">True when it was taken out again.</param>
/// <param name="Spool">Label of the spool it was wound from; empty when none was named.</param>
/// <param name="Lot">Lot of that spool; empty when not known.</param>
/// <param name="Machine">Winder; empty when not named.</param>
/// <param name="Persons">Who wound and read it.</param>
/// <param name="Readings">Its readings in force.</param>
public sealed record TracedCoil(
    BatchRecord Batch,
    string Tag,
    string Place,
    bool IsOut,
    string Spool,
    string Lot,
    string Machine,
    IReadOnlyList<string> Persons,
    IReadOnlyList<ReadingRecord> Readings
)
{
    /// <summary>What to know about the spool; empty when nothing is in doubt.</summary>
    public string SpoolDoubt { get; init; } = "";
}
