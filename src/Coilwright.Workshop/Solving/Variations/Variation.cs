using Coilwright.Analysis.Comparisons;

namespace Coilwright.Workshop.Solving.Variations;

/// <summary>A variant of a recipe and what it changes.</summary>
/// <param name="Question">The question.</param>
/// <param name="Name">A name for it as a recipe of its own.</param>
/// <param name="RecipeJson">The document, with the recipe's own name.</param>
/// <param name="Parts">What changes on the bench and on the shelf, in words; each a sentence without its stop.</param>
/// <param name="Physics">Null when parts and labels change and nothing that a string or a meter could tell.</param>
public sealed record Variation(
    VariationQuestion Question,
    string Name,
    string RecipeJson,
    IReadOnlyList<string> Parts,
    VariationPhysics? Physics
);

/// <summary>What a variant changes physically.</summary>
/// <param name="EqualTurns">Recipe against variant with the recipe's turns.</param>
/// <param name="MeanTurnM">Mean turn of each coil, m: of the recipe and of the variant with equal turns.</param>
/// <param name="Turns">Turns of each coil: of the recipe, and of the variant for the recipe's ohms.</param>
/// <param name="EqualOhms">Recipe against variant with the turns for equal ohms; empty when those are the recipe's turns.</param>
/// <param name="EqualOhmsJson">The document with the turns for equal ohms; null when those are the recipe's turns.</param>
/// <param name="DoesNotFit">Why the winding has no room in the variant; null when it has.</param>
public sealed record VariationPhysics(
    IReadOnlyList<ComparisonLine> EqualTurns,
    IReadOnlyList<(double Now, double Then)> MeanTurnM,
    IReadOnlyList<(double Now, double Then)> Turns,
    IReadOnlyList<ComparisonLine> EqualOhms,
    string? EqualOhmsJson,
    string? DoesNotFit
);
