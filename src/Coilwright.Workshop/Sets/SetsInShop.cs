using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Sets;

/// <summary>The sets of which a piece is in the shop.</summary>
/// <param name="Sets">Each with its pieces that can be shown.</param>
/// <param name="Unreadable">Pieces, of these sets or for new ones, that cannot be shown, with the reasons.</param>
public sealed record SetsInShop(IReadOnlyList<PieceSet> Sets, IReadOnlyList<UnreadableRecord> Unreadable);
