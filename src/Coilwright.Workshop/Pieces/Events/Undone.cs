using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>Another event was taken back.</summary>
public sealed record Undone : RemarkAbout
{
    /// <summary>What was entered wrongly.</summary>
    public required string Reason { get; init; }

    public override string Short => "taken back";

    public override string Sentence(TracedPiece piece) => $"taken back: {OtherWords(piece)}, because {Reason}";
}
