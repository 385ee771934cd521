using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>What is said of one other event.</summary>
public abstract record RemarkAbout : Remark
{
    /// <summary>The other event.</summary>
    public required Guid About { get; init; }

    /// <summary>The other event in the fewest words; nothing where it is not known.</summary>
    private protected string OtherWords(TracedPiece piece) =>
        piece.Snapshot.History.All.FirstOrDefault(other => other.Id == About)?.Short ?? "";
}
