using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It is kept for a customer until it is shipped; the last one holds.</summary>
public sealed record Reserved : PieceEvent
{
    /// <summary>Who it is kept for. It has no column of its own: it went to nobody yet.</summary>
    public required Guid KeptFor { get; init; }

    public override string Short => "reserved";

    public override string Sentence(TracedPiece piece) => $"reserved for {piece.NameOf(KeptFor)}";
}
