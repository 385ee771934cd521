using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Polarity;

namespace Coilwright.Workshop.Sets;

/// <summary>A piece as a candidate for a set.</summary>
/// <param name="Snapshot">The piece.</param>
/// <param name="Output">What it gives.</param>
/// <param name="Coils">The signs of its coils, with turns × mean area of the bare winding.</param>
public sealed record SetPiece(PieceSnapshot Snapshot, PieceOutput Output, IReadOnlyList<CoilSigns> Coils)
{
    /// <summary>What a person should know before matching it; empty when nothing.</summary>
    public string Caution =>
        string.Join(
            "; ",
            new[]
            {
                Snapshot.History.Test is null ? "not tested yet: its first swing is not proven" : "",
                MagnetCharge.Of(Snapshot) is { Level.IsFull: false } charge && !Snapshot.Plans.Any(plan => plan.Charge is not null)
                    ? $"{charge.Level.Done}, and its recipe does not say so: the output is for the recipe's magnets"
                    : "",
            }.Where(word => word.Length > 0)
        );
}
