using Coilwright.Physics;

namespace Coilwright.Workshop.Pieces;

/// <summary>Coils that are proposed to go together.</summary>
/// <param name="Coils">One for each coil of the recipe, in its order.</param>
/// <param name="Difference">How far apart they are, or from the offset that is meant, a part of the smaller value; null where nothing is paired.</param>
/// <param name="HumLevelDb">Hum left against the same coils adding, dB; null where nothing is paired.</param>
public sealed record ProposedPiece(IReadOnlyList<CoilAtHand> Coils, double? Difference, Estimate? HumLevelDb);
