namespace Coilwright.Papers.Shipping;

/// <summary>One piece in a box.</summary>
/// <param name="Serial">The piece.</param>
/// <param name="Recipe">Name of its recipe.</param>
/// <param name="Revision">Letter of the revision, or empty.</param>
/// <param name="Box">Which box; empty when there is one.</param>
public sealed record PackedPiece(string Serial, string Recipe, string Revision = "", string Box = "")
{
    /// <summary>Its set and place there; empty when it stands in none.</summary>
    public string Set { get; init; } = "";
}
