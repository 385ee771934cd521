namespace Coilwright.Workshop.Pieces;

/// <summary>What the final test asks of one quantity.</summary>
/// <param name="Quantity">"dcResistance" at 20 °C, "inductance" at its frequency, "q", "acResistance" or "loadedPeak".</param>
/// <param name="Reference">Value of the golden piece, or the recipe's nominal, SI; above 0.</param>
/// <param name="Tolerance">Largest deviation either way, a part of the reference.</param>
/// <param name="IsGolden">True when the reference is a golden piece, false when it is the recipe.</param>
/// <param name="Needed">True when a piece cannot pass without it.</param>
public sealed record TestLine(string Quantity, double Reference, double Tolerance, bool IsGolden = true, bool Needed = true);
