using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It was given up.</summary>
public sealed record Scrapped : ClosingEvent
{
    public required string Reason { get; init; }

    public override string Short => "scrapped";

    public override string WorkDone => Reason;

    public override string Sentence(TracedPiece piece) => $"scrapped: {Reason}{After("; cost ", Cost)}";
}
