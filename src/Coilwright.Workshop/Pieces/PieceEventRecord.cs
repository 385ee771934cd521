namespace Coilwright.Workshop.Pieces;

/// <summary>One event in the life of a piece. Never edited: an undo is a new event that names the one it takes back.</summary>
public sealed record PieceEventRecord
{
    /// <summary>Client-made id; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required Guid PieceId { get; init; }
    public required PieceEventKind Kind { get; init; }

    /// <summary>Word of the step, for the two kinds that have one; of a set its place.</summary>
    public string Step { get; init; } = "";

    /// <summary>The potting basket it went into.</summary>
    public Guid? BasketId { get; init; }

    /// <summary>The ink it was marked with.</summary>
    public Guid? MixId { get; init; }

    /// <summary>Who it went to.</summary>
    public Guid? CustomerId { get; init; }

    /// <summary>The event that this one lifts or takes back, the part that was taken out, or the set that it joined or left.</summary>
    public Guid? About { get; init; }

    /// <summary>True for a test that was passed, false for one that was not; null elsewhere.</summary>
    public bool? Passed { get; init; }

    /// <summary>
    /// Verdict, reason, complaint or what was done, in workshop words; of a joined set its name and, on a second line, why this choice.
    /// </summary>
    public string Words { get; init; } = "";

    /// <summary>What it cost, as the shop writes it.</summary>
    public string Cost { get; init; } = "";

    /// <summary>Text for the customer.</summary>
    public string Answer { get; init; } = "";
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }
}
