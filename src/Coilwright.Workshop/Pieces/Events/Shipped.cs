using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It left for a customer.</summary>
public sealed record Shipped : PieceEvent
{
    /// <summary>Who it went to.</summary>
    public required Guid CustomerId { get; init; }

    public override string Short => "shipped";

    public override string Sentence(TracedPiece piece) => $"shipped to {piece.NameOf(CustomerId)}";

    /// <summary>A shipment may be taken back on the day it was entered.</summary>
    internal override Problem? UndoRefusal(UndoGround ground) =>
        DayOf(TimeUtc, ground.Zone) == DayOf(ground.NowUtc, ground.Zone)
            ? null
            : new Problem(
                "piece",
                $"{ground.Serial} was shipped {ShopTime.Words(TimeUtc, ground.Zone)}: after that day its parcel has left",
                ground.Serial,
                "book its return when it comes back"
            );

    private static DateTime DayOf(DateTimeOffset utc, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(utc, zone).Date;
}
