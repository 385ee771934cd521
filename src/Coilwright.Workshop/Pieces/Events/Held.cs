using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>A hold was put on it; a person must lift it.</summary>
public sealed record Held : PieceEvent
{
    public required string Reason { get; init; }

    public override string Short => $"held: {Reason}";

    internal override Problem? UndoRefusal(UndoGround ground) =>
        ground.Alarms.Contains(Id)
            ? new Problem(
                "piece",
                $"{ground.Serial} is held because of what the bath read: that is not taken back",
                ground.Serial,
                "take the reading back if it was mistyped; else lift the hold with what the inspection found"
            )
            : null;
}
