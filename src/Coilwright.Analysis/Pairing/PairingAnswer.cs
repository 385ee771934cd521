namespace Coilwright.Analysis.Pairing;

/// <summary>The best pairing of the coils at hand.</summary>
/// <param name="Pairs">The pairs, in the order of their first coils.</param>
/// <param name="Left">Places of the coils that find no partner, in order; they stay in stock.</param>
/// <param name="Total">Sum of the pairs' differences, the least that this number of pairs can have.</param>
public sealed record PairingAnswer(IReadOnlyList<CoilPair> Pairs, IReadOnlyList<int> Left, double Total);
