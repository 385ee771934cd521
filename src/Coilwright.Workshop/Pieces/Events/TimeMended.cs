using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>The time of another event was mended, with the reason.</summary>
public sealed record TimeMended : RemarkAbout
{
    /// <summary>The right time of the other event.</summary>
    public required DateTimeOffset RightUtc { get; init; }

    /// <summary>Why it was wrong.</summary>
    public required string Reason { get; init; }

    public override string Short => "time mended";

    public override string Sentence(TracedPiece piece) =>
        $"time mended: {OtherWords(piece)} was at {ShopTime.Words(RightUtc, piece.Zone)}, because {Reason}";
}
