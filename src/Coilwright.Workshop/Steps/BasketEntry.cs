namespace Coilwright.Workshop.Steps;

/// <summary>What a person enters when a basket goes into the bath, as typed.</summary>
public sealed record BasketEntry
{
    /// <summary>Made by the client; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required string Label { get; init; }

    /// <summary>Lot of what is in the bath.</summary>
    public required string Lot { get; init; }

    /// <summary>The bath as read.</summary>
    public required string Bath { get; init; }

    /// <summary>Serials of the pieces.</summary>
    public required IReadOnlyList<string> Pieces { get; init; }

    /// <summary>Hottest bath they bear, where the shop's rules do not say; empty takes the rules'.</summary>
    public string Limit { get; init; } = "";
    public string Person { get; init; } = "";
}
