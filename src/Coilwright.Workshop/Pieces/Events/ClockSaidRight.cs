using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A person said that the clock was right while records stood later than it: those were made by a clock that was ahead.</summary>
public sealed record ClockSaidRight : Remark
{
    public override string Short => "the clock was right";

    public override string Sentence(TracedPiece piece) => $"this computer's clock was right at {ShopTime.Words(TimeUtc, piece.Zone)}";
}
