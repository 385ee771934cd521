using Coilwright.Analysis.Comparisons;
using Coilwright.Workshop.Solving;

namespace Coilwright.Web.Views;

/// <summary>Pinned answers side by side.</summary>
/// <param name="Against">The one that the others are compared with.</param>
/// <param name="Others">The others, each against it.</param>
/// <param name="Compared">Responses, and what differs in the recipes.</param>
/// <param name="Gone">Pinned ones that are no longer among the answers, since the recipe or the question changed.</param>
public sealed record PinnedViewModel(
    PinnedDesign Against,
    IReadOnlyList<(PinnedDesign Design, IReadOnlyList<ComparisonLine> Lines)> Others,
    CompareViewModel Compared,
    int Gone
);

/// <summary>One of them.</summary>
/// <param name="Key">Its key; empty for the recipe as it stands.</param>
/// <param name="Words">What to call it.</param>
/// <param name="Json">Its document.</param>
/// <param name="Solution">The answer; null for the recipe as it stands.</param>
public sealed record PinnedDesign(string Key, string Words, string Json, Solution? Solution);
