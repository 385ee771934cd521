namespace Coilwright.Workshop.Recipes.Sizes;

/// <summary>How a part is made: what its pieces have in common follows from it.</summary>
public enum MadeBy
{
    /// <summary>The recipe does not say.</summary>
    NotSaid,

    /// <summary>In one tool: moulded, cast or stamped, each piece like the other.</summary>
    Tool,

    /// <summary>By hand, each piece for itself.</summary>
    Hand,
}

/// <summary>How a part is made and where its lengths come from.</summary>
/// <param name="By">How it is made.</param>
/// <param name="Measured">True when its lengths were measured on a piece, not taken from a drawing.</param>
public sealed record PartMaking(MadeBy By, bool Measured)
{
    /// <summary>Neither is said: common practice.</summary>
    public static PartMaking NotSaid { get; } = new(MadeBy.NotSaid, false);
}
