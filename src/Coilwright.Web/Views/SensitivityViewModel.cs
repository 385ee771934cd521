using Coilwright.Analysis.Comparisons;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views;

/// <summary>What small changes of a recipe do.</summary>
/// <param name="Lines">One each change.</param>
/// <param name="Problems">Mistakes in the recipe or the load; then there are no lines.</param>
public sealed record SensitivityViewModel(IReadOnlyList<SensitivityLine> Lines, IReadOnlyList<Problem> Problems)
{
    /// <summary>The view of what was found.</summary>
    public static SensitivityViewModel Of(ReadOutcome<IReadOnlyList<SensitivityLine>> found) => new(found.Value ?? [], found.Problems);
}
