namespace Coilwright.Analysis.Lots;

/// <summary>Prices that fall with the size of a lot.</summary>
/// <param name="At">Sizes from which each price holds: the first is zero, then rising.</param>
/// <param name="Price">Price of a unit from each size on, falling.</param>
/// <param name="AllUnits">True when the price holds for the whole lot; false when it holds for the units beyond its size alone.</param>
public sealed record PriceBreaks(IReadOnlyList<double> At, IReadOnlyList<double> Price, bool AllUnits)
{
    /// <summary>One price for every size.</summary>
    /// <param name="price">Money for one unit.</param>
    public static PriceBreaks Single(double price) => new([0], [price], AllUnits: true);

    /// <summary>Where the price of the last break that a lot reaches stands.</summary>
    /// <param name="lot">Units in the lot.</param>
    public int Reached(double lot) => Enumerable.Range(0, At.Count).Last(at => at == 0 || lot >= At[at]);

    /// <summary>What a lot costs beyond its units at the price of a break: what its first units cost more.</summary>
    /// <param name="at">The break.</param>
    public double Extra(int at) =>
        AllUnits ? 0 : Enumerable.Range(0, at).Sum(below => Price[below] * (At[below + 1] - At[below])) - Price[at] * At[at];
}
