using System.Text.Json.Nodes;
using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Storage.Model;

/// <summary>An event of a piece as the file keeps it: what is looked for in columns of its own, the rest as the kind's JSON.</summary>
internal sealed record PieceEventRow
{
    private const string BasketName = "basketId",
        MixName = "mixId",
        CustomerName = "customerId",
        AboutName = "about";

    public required Guid Id { get; init; }
    public required Guid PieceId { get; init; }
    public required string Kind { get; init; }
    public Guid? BasketId { get; init; }
    public Guid? MixId { get; init; }
    public Guid? CustomerId { get; init; }

    /// <summary>The event, part or set that it is about.</summary>
    public Guid? About { get; init; }

    /// <summary>What else the event says, as JSON.</summary>
    public required string Payload { get; init; }
    public required string Person { get; init; }
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>The row of an event.</summary>
    public static PieceEventRow Of(PieceEvent happened)
    {
        JsonObject rest = EventPayload.Write(happened, "id", "pieceId", "person", "timeUtc");
        return new PieceEventRow
        {
            Id = happened.Id,
            PieceId = happened.PieceId,
            Kind = happened.Kind,
            BasketId = rest.Take<Guid?>(BasketName),
            MixId = rest.Take<Guid?>(MixName),
            CustomerId = rest.Take<Guid?>(CustomerName),
            About = rest.Take<Guid?>(AboutName),
            Payload = rest.Text(),
            Person = happened.Person,
            TimeUtc = happened.TimeUtc,
        };
    }

    /// <summary>The event of this row.</summary>
    public PieceEvent ToEvent() =>
        EventPayload.Read<PieceEvent>(
            Kind,
            Payload,
            ("id", Id),
            ("pieceId", PieceId),
            (BasketName, BasketId),
            (MixName, MixId),
            (CustomerName, CustomerId),
            (AboutName, About),
            ("person", Person),
            ("timeUtc", TimeUtc)
        );
}
