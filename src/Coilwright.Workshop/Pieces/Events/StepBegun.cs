using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A step began.</summary>
public sealed record StepBegun : StepEvent
{
    /// <summary>The potting basket it went into; null for other steps.</summary>
    public Guid? BasketId { get; init; }

    /// <summary>The ink it was marked with; null for other steps.</summary>
    public Guid? MixId { get; init; }

    public override string Short => $"{Step} begun";

    public override string Sentence(TracedPiece piece) => Short + Named(" in basket ", BasketId, piece) + Named(" with ink ", MixId, piece);

    /// <summary>A step without a shortest time ends as it begins; two entries that waited on a tablet may arrive at one moment.</summary>
    internal override bool IsOneEntryWith(PieceEvent next, PieceEventLog history) =>
        next is StepEnded ended && ended.Step == Step && history.LateOf(this) == history.LateOf(next);

    internal override string EntryWords(IReadOnlyList<PieceEvent> rest) => rest is [StepEnded] ? Step + " done" : Short;

    private static string Named(string lead, Guid? id, TracedPiece piece) => id is { } known ? lead + piece.NameOf(known) : "";
}
