using Coilwright.Analysis.Originals;
using Coilwright.Workshop.Originals;

namespace Coilwright.Application.Curves;

/// <summary>A person asks what an original was made of.</summary>
public sealed class IdentifyOriginal
{
    /// <summary>Explanations with their probabilities, and the best next reading.</summary>
    /// <param name="original">The original with its readings.</param>
    /// <param name="cancel">Stops it; what was weighed by then is the answer.</param>
    public OriginalAnswer Identify(Original original, CancellationToken cancel) =>
        OriginalFinder.Explain(OriginalCandidates.For(original), original.Readings, cancel);
}
