using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It was mended or wound anew.</summary>
public sealed record Repaired : ClosingEvent
{
    /// <summary>What was done.</summary>
    public required string Done { get; init; }

    public override string Short => "mended";

    public override string WorkDone => Done;

    public override string Sentence(TracedPiece piece) => $"mended: {Done}{After("; cost ", Cost)}{After("; answer: ", Answer)}";
}
