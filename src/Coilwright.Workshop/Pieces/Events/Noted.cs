namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A word about it, nothing more.</summary>
public sealed record Noted : PieceEvent
{
    public required string Text { get; init; }

    public override string Short => Text;
}
