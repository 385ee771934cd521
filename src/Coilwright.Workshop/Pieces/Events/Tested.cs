using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>The final test was made.</summary>
public sealed record Tested : PieceEvent
{
    public required bool Passed { get; init; }

    /// <summary>The verdict in workshop words: "pass", "hold: …".</summary>
    public required string Verdict { get; init; }

    /// <summary>What each reading came to; one that did not pass says so.</summary>
    public required IReadOnlyList<string> Outcomes { get; init; }

    /// <summary>What was asked of each quantity when it was judged; empty in tests made before that was kept.</summary>
    public IReadOnlyList<TestLine> Limits { get; init; } = [];

    /// <summary>What was read, in a line.</summary>
    public string Details => string.Join("; ", Outcomes);

    /// <summary>Verdict and outcomes in a line.</summary>
    public string Result => Outcomes.Count > 0 ? $"{Verdict} — {Details}" : Verdict;

    public override string Short => "final test";

    public override string Sentence(TracedPiece piece) => $"final test: {Result}";

    internal override bool IsOneEntryWith(PieceEvent next, PieceEventLog history) => next is MadeGolden;

    internal override string EntryWords(IReadOnlyList<PieceEvent> rest) =>
        Short + (rest is [MadeGolden golden, ..] ? ", " + golden.Short : "");
}
