using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Batches;

namespace Coilwright.Workshop.Pieces;

/// <summary>A wound coil that stands in no piece.</summary>
/// <param name="Batch">Its batch.</param>
/// <param name="Coil">Its readings and verdict.</param>
/// <param name="Turns">Turns it was wound with, as far as noted; else those of its recipe.</param>
public sealed record CoilAtHand(BatchRecord Batch, CoilDossier Coil, double Turns)
{
    /// <summary>True when the turns were noted of this coil, false when they are those it was to have.</summary>
    public bool TurnsNoted { get; init; }

    /// <summary>"batch/tag".</summary>
    public string Code => BatchTags.CodeOf(Batch, Coil.Tag);

    /// <summary>Its inductance, H; null when not read.</summary>
    public double? InductanceH =>
        Coil.InForce.LastOrDefault(reading => reading is { Quantity: QuantityKey.Inductance, Si: > 0, Flag: "" })?.Si;

    /// <summary>Its resistance at 20 °C, Ω; null when there is no usable one.</summary>
    public double? OhmAt20C => Coil.Verdict.DcResistanceAt20C?.Value;
}
