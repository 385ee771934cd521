using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Sets;

/// <summary>A set as it stands: it follows from the events of its pieces.</summary>
/// <param name="Id">The set.</param>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Members">Its pieces with their places, in the order they were entered.</param>
public sealed record PieceSet(Guid Id, string Name, IReadOnlyList<(PieceSnapshot Snapshot, SetMembership Place)> Members)
{
    /// <summary>Why this choice and not the closest one; empty for the closest.</summary>
    public string Why => Members.Count > 0 ? Members[0].Place.Why : "";

    /// <summary>Serial and place of every piece but one.</summary>
    public string OthersWords(PieceSnapshot but) =>
        string.Join(
            ", ",
            Members.Where(one => one.Snapshot.Piece.Id != but.Piece.Id).Select(one => $"{one.Place.Place} {one.Snapshot.Piece.Serial}")
        );

    /// <summary>The sets that these pieces stand in now.</summary>
    public static IReadOnlyList<PieceSet> Among(IEnumerable<PieceSnapshot> lives) =>
        [
            .. lives
                .Select(life => (Snapshot: life, Place: SetMembership.Of(life)))
                .Where(one => one.Place is not null)
                .GroupBy(one => one.Place!.SetId)
                .Select(same => new PieceSet(
                    same.Key,
                    same.First().Place!.Name,
                    [.. same.Select(one => (one.Snapshot, one.Place!)).OrderBy(one => one.Item2.TimeUtc)]
                )),
        ];
}
