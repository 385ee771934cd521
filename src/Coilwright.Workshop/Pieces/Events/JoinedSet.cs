using System.Text.Json.Serialization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It was matched with others to a set.</summary>
public sealed record JoinedSet : PieceEvent
{
    [JsonPropertyName("about")]
    public required Guid SetId { get; init; }

    /// <summary>What the shop calls the set.</summary>
    public required string Name { get; init; }

    /// <summary>Its place: neck, middle, bridge, or the shop's own word.</summary>
    public required string Place { get; init; }

    /// <summary>By how much its output is meant to lie above the others', dB.</summary>
    public double OffsetDb { get; init; }

    /// <summary>The same exactly as it was typed; null where nobody was asked.</summary>
    public string? OffsetTyped { get; init; }

    /// <summary>Why this choice and not the closest one; empty for the closest.</summary>
    public string Why { get; init; } = "";

    /// <summary>Where it stands since.</summary>
    public SetMembership Membership => new(SetId, Name, Place, OffsetDb, Why, Person, TimeUtc);

    public override string Short => "joined a set";

    public override IReadOnlyList<PieceReadingRecord> Values =>
        OffsetTyped is null
            ? []
            :
            [
                new PieceReadingRecord
                {
                    Id = ReadingChain.IdWithin(Id, QuantityKey.SetOffset),
                    PieceId = PieceId,
                    EventId = Id,
                    Quantity = QuantityKey.SetOffset,
                    Typed = OffsetTyped,
                    Si = OffsetDb,
                    TimeUtc = TimeUtc,
                },
            ];

    public override string Sentence(TracedPiece piece)
    {
        string level = Math.Abs(OffsetDb) > 0 ? $", target level {SetMembership.Decibels(OffsetDb)}" : "";
        return $"into {Membership.Words}{level}{After("; chosen because: ", Why)}";
    }
}
