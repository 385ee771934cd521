namespace Coilwright.Workshop.Pieces.Events;

/// <summary>The shop keeps this piece as its measure.</summary>
public sealed record MadeGolden : PieceEvent
{
    public override string Short => "kept as the shop's measure";
}
