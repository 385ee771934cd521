using Coilwright.Analysis.Comparisons;
using Coilwright.Application.Comparisons;

namespace Coilwright.Application.Solving;

/// <summary>Pinned answers side by side.</summary>
/// <param name="Against">The one that the others are compared with.</param>
/// <param name="Others">The others, each against it.</param>
/// <param name="Compared">Responses, and what differs in the recipes.</param>
/// <param name="Gone">Pinned ones that are no longer among the answers, since the recipe or the question changed.</param>
public sealed record PinnedComparison(
    PinnedDesign Against,
    IReadOnlyList<(PinnedDesign Design, IReadOnlyList<ComparisonLine> Lines)> Others,
    RecipeComparison Compared,
    int Gone
);
