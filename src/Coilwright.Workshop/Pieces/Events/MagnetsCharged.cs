using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>Its magnets were charged or knocked down outside their step, for example after a repair.</summary>
public sealed record MagnetsCharged : PieceEvent
{
    /// <summary>To what, and by what means.</summary>
    public required ChargeAsSaid Charge { get; init; }

    /// <summary>Why it was done; empty when nobody said.</summary>
    public string Why { get; init; } = "";

    public override string Short => "magnets charged anew";

    public override MagnetCharge ChargeSaid => Charge.By(this) with { Why = Why };

    public override IReadOnlyList<PieceReadingRecord> Values => [Charge.Value(this)];

    public override string Sentence(TracedPiece piece) => ChargeSaid.Words;
}
