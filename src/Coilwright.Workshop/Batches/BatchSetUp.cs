using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Batches;

/// <summary>A batch and how its winder is set for it.</summary>
/// <param name="Run">The batch as it stands.</param>
/// <param name="SetUp">The set-up of its coil on the winder, with the turns and the wire of this batch.</param>
/// <param name="Spool">The spool in use; null when none is named, or none of that label is on record.</param>
public sealed record BatchSetUp(BatchProgress Run, WindingSetUp SetUp, SpoolStatus? Spool)
{
    /// <summary>The coil that is wound.</summary>
    public CoilSetUp Coil => SetUp.Coils[0];
}
