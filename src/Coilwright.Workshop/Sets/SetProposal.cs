using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Sets;

/// <summary>What a search for a set gives.</summary>
/// <param name="Problems">Everything that is wrong with the question.</param>
/// <param name="Choices">The closest sets, the closest first.</param>
/// <param name="Left">Pieces at hand that the closest set leaves in stock.</param>
public sealed record SetProposal(IReadOnlyList<Problem> Problems, IReadOnlyList<SetChoice> Choices, IReadOnlyList<PieceSnapshot> Left);
