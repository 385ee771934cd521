using System.Text.Json.Serialization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A coil was taken out and another put in its place.</summary>
public sealed record PartOut : PieceEvent
{
    /// <summary>The part that was taken out.</summary>
    [JsonPropertyName("about")]
    public required Guid PartId { get; init; }

    /// <summary>Tag of the coil that was taken out.</summary>
    public required string OutTag { get; init; }

    /// <summary>Tag of the coil that was put in.</summary>
    public required string InTag { get; init; }
    public required string Reason { get; init; }

    public override string Short => $"{OutTag} out, {InTag} in: {Reason}";

    public override string WorkDone => Short;

    internal override Problem? UndoRefusal(UndoGround ground) =>
        new(
            "piece",
            $"{ground.Serial}: an exchange of coils is not taken back, since both coils changed places",
            ground.Serial,
            "exchange them the other way round"
        );
}
