using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A step ended.</summary>
public sealed record StepEnded : StepEvent
{
    /// <summary>What the magnets were charged to in it; null when nobody said.</summary>
    public ChargeAsSaid? Charge { get; init; }

    public override string Short => $"{Step} ended";

    public override MagnetCharge? ChargeSaid => Charge?.By(this);

    public override IReadOnlyList<PieceReadingRecord> Values => Charge is null ? [] : [Charge.Value(this)];

    public override string Sentence(TracedPiece piece) => Short + After(": ", ChargeSaid?.Words ?? "");
}
