using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It came back.</summary>
public sealed record Returned : PieceEvent
{
    /// <summary>What the customer says.</summary>
    public required string Complaint { get; init; }

    public override string Short => "returned";

    public override string Sentence(TracedPiece piece) => $"returned: {Complaint}";
}
