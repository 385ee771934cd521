namespace Coilwright.Workshop.Pieces;

/// <summary>A pickup as it was put together. Never edited; what happens to it is a <see cref="Events.PieceEvent"/>.</summary>
public sealed record PieceRecord
{
    /// <summary>Client-made id; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }

    /// <summary>Number on the label; one of a kind in the shop, whatever the case of its letters.</summary>
    public required string Serial { get; init; }
    public required Guid RecipeId { get; init; }
    public required int RevisionNumber { get; init; }

    /// <summary>Choices that change parts and labels, one a line: "cover: nickel silver".</summary>
    public string Options { get; init; } = "";

    /// <summary>Why these coils were put together against the proposal; empty when as proposed.</summary>
    public string Overruled { get; init; } = "";
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }
}
