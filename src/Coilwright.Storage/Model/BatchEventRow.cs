using System.Text.Json.Nodes;
using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Storage.Model;

/// <summary>An event of a batch as the file keeps it: what is looked for in columns of its own, the rest as the kind's JSON.</summary>
internal sealed record BatchEventRow
{
    private const string UndoesName = "undoes",
        SpoolName = "spool";

    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }
    public required string Kind { get; init; }
    public required string Tag { get; init; }

    /// <summary>Label of the spool that was put on; empty for other events.</summary>
    public required string Spool { get; init; }

    /// <summary>The event taken back.</summary>
    public Guid? Undoes { get; init; }

    /// <summary>What else the event says, as JSON.</summary>
    public required string Payload { get; init; }
    public required string Person { get; init; }
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>The row of an event.</summary>
    public static BatchEventRow Of(BatchEvent happened)
    {
        JsonObject rest = EventPayload.Write(happened, "id", "batchId", "tag", "person", "timeUtc");
        return new BatchEventRow
        {
            Id = happened.Id,
            BatchId = happened.BatchId,
            Tag = happened.Tag,
            Kind = happened.Kind,
            Spool = rest.Take<string>(SpoolName) ?? "",
            Undoes = rest.Take<Guid?>(UndoesName),
            Payload = rest.Text(),
            Person = happened.Person,
            TimeUtc = happened.TimeUtc,
        };
    }

    /// <summary>The event of this row.</summary>
    public BatchEvent ToEvent() =>
        EventPayload.Read<BatchEvent>(
            Kind,
            Payload,
            ("id", Id),
            ("batchId", BatchId),
            ("tag", Tag),
            (SpoolName, Spool.Length > 0 ? Spool : null),
            (UndoesName, Undoes),
            ("person", Person),
            ("timeUtc", TimeUtc)
        );
}
