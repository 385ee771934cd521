namespace Coilwright.Workshop.Pieces;

/// <summary>What a person enters to put a piece together, as typed.</summary>
public sealed record AssemblyEntry
{
    /// <summary>Made by the client; sent twice it makes one piece.</summary>
    public required Guid Id { get; init; }

    /// <summary>Coils as "batch/tag", one for each coil of the recipe, in any order.</summary>
    public required IReadOnlyList<string> Coils { get; init; }

    /// <summary>Serial; empty takes the next one of the shop's pattern.</summary>
    public string Serial { get; init; } = "";

    /// <summary>Lot of the magnets; needed where the recipe has magnets.</summary>
    public string MagnetLot { get; init; } = "";

    /// <summary>Lots of other parts, "name: lot".</summary>
    public IReadOnlyList<string> Lots { get; init; } = [];

    /// <summary>Choices that change parts and labels only, "name: value".</summary>
    public IReadOnlyList<string> Options { get; init; } = [];

    /// <summary>Why these coils and not the proposed ones; empty when as proposed.</summary>
    public string Overruled { get; init; } = "";
    public string Person { get; init; } = "";
}
