namespace Coilwright.Workshop.Pieces;

/// <summary>What kind of part stands in a piece.</summary>
public enum PartKind
{
    /// <summary>A wound coil of a batch.</summary>
    Coil,

    /// <summary>Magnets of a lot.</summary>
    Magnets,

    /// <summary>Anything else with a lot: poles, covers, base plates, leads.</summary>
    Other,
}

/// <summary>A part of a piece. Never edited: a part taken out is named by a later event.</summary>
public sealed record PiecePartRecord
{
    /// <summary>Client-made id.</summary>
    public required Guid Id { get; init; }
    public required Guid PieceId { get; init; }
    public required PartKind Kind { get; init; }

    /// <summary>Which of the recipe's coils it is, or the part's name.</summary>
    public required string Place { get; init; }

    /// <summary>Batch of a coil; null for other parts.</summary>
    public Guid? BatchId { get; init; }

    /// <summary>Tag of a coil; empty for other parts.</summary>
    public string Tag { get; init; } = "";

    /// <summary>Lot of magnets or other parts, as the shop writes it; empty for a coil.</summary>
    public string Lot { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }
}
