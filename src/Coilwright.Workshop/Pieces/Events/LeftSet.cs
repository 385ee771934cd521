using System.Text.Json.Serialization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>It left its set.</summary>
public sealed record LeftSet : PieceEvent
{
    [JsonPropertyName("about")]
    public required Guid SetId { get; init; }

    /// <summary>What the shop calls the set.</summary>
    public required string Name { get; init; }
    public required string Reason { get; init; }

    public override string Short => $"out of set {Name}: {Reason}";

    /// <summary>A piece goes back into its set only while its place there is free, and no other set has taken the name.</summary>
    internal override Problem? UndoRefusal(UndoGround ground)
    {
        if (ground.Life.History.All.OfType<JoinedSet>().LastOrDefault(one => one.SetId == SetId) is not { Membership: var was })
        {
            return null;
        }

        if (ground.Namesakes.FirstOrDefault(set => set.Id != SetId && NameKey.Same(set.Name, was.Name)) is { } other)
        {
            string members = string.Join(", ", other.Members.Select(one => $"{one.Place.Place} {one.Snapshot.Piece.Serial}"));
            return new Problem(
                "piece",
                $"{ground.Serial} cannot go back into set {was.Name}: another set has that name meanwhile ({members})",
                ground.Serial,
                "match it anew, under another name"
            );
        }

        PieceSnapshot? taken = ground
            .Namesakes.FirstOrDefault(set => set.Id == SetId)
            ?.Members.FirstOrDefault(one => one.Snapshot.Piece.Id != PieceId && NameKey.Same(one.Place.Place, was.Place))
            .Snapshot;
        return taken is null
            ? null
            : new Problem(
                "piece",
                $"{ground.Serial} cannot go back into {was.Words}: {taken.Piece.Serial} stands there meanwhile",
                ground.Serial,
                "take that one out first, or match it anew"
            );
    }
}
