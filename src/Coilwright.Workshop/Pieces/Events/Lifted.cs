using System.Text.Json.Serialization;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A hold was lifted, with a reason.</summary>
public sealed record Lifted : PieceEvent
{
    /// <summary>The event that held it.</summary>
    [JsonPropertyName("about")]
    public required Guid HoldId { get; init; }
    public required string Reason { get; init; }

    public override string Short => $"hold lifted: {Reason}";

    /// <summary>One entry lifts every hold that runs.</summary>
    internal override bool IsOneEntryWith(PieceEvent next, PieceEventLog history) => next is Lifted;
}
