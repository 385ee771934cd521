namespace Coilwright.Workshop.Pieces;

/// <summary>What a person takes back, as typed.</summary>
public sealed record UndoEntry
{
    /// <summary>Made by the client; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }

    /// <summary>The pieces; may be empty when a basket is named.</summary>
    public required IReadOnlyList<string> Serials { get; init; }

    /// <summary>The basket that went into the bath wrongly; empty for anything else.</summary>
    public string Basket { get; init; } = "";

    /// <summary>What was entered wrongly.</summary>
    public required string Reason { get; init; }

    /// <summary>The event that the page showed as the newest; null takes the newest, whatever it is.</summary>
    public Guid? Shown { get; init; }
    public string Person { get; init; } = "";
}
