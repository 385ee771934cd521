namespace Coilwright.Workshop.Sets;

/// <summary>What a person enters to match pieces to a set, as typed.</summary>
public sealed record SetEntry
{
    /// <summary>Made by the client, and the set's id; sent twice it makes one set.</summary>
    public required Guid Id { get; init; }

    /// <summary>What the shop calls the set.</summary>
    public required string Name { get; init; }

    /// <summary>Two to four places, each with the serial of its piece.</summary>
    public required IReadOnlyList<SetPlace> Places { get; init; }

    /// <summary>Why these pieces, where others lie closer or two work against each other.</summary>
    public string Why { get; init; } = "";
    public string Person { get; init; } = "";
}
