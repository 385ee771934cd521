using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>What came back was looked at and measured.</summary>
public sealed record Examined : PieceEvent
{
    /// <summary>What the readings say against those at dispatch.</summary>
    public required string Finding { get; init; }

    /// <summary>What was seen; empty for nothing.</summary>
    public string Flaws { get; init; } = "";

    public override string Short => "examined";

    public override string Sentence(TracedPiece piece) => $"examined: {Finding}{After("; seen: ", Flaws)}";
}
