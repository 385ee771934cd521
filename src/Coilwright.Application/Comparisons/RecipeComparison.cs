using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Comparisons;

/// <summary>Designs, loads and a measured curve side by side.</summary>
public sealed record RecipeComparison
{
    /// <summary>Every mistake in a recipe, the load or the measured curve; then nothing is compared.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>The designs, the pinned one first.</summary>
    public IReadOnlyList<ComparedDesign> Designs { get; init; } = [];

    /// <summary>What they hang on by its names, the first one chosen.</summary>
    public IReadOnlyList<(string Name, LoadCircuit Load)> Loads { get; init; } = [];

    /// <summary>Each design on each load.</summary>
    public IReadOnlyList<ComparedCurve> Curves { get; init; } = [];

    /// <summary>Common frequencies of the curves.</summary>
    public IReadOnlyList<double> FrequenciesHz { get; init; } = [];

    /// <summary>The measured curve as read; null for none.</summary>
    public CurveTable? Read { get; init; }

    /// <summary>The fit of a measured impedance, which stands among the designs; null for none.</summary>
    public CurveFit? Fit { get; init; }

    /// <summary>A measured gain relative to its first point, at the common frequencies; null for none.</summary>
    public IReadOnlyList<double?>? MeasuredGain { get; init; }

    /// <summary>What differs between the recipes: path, and the value in each.</summary>
    public IReadOnlyList<(string Path, IReadOnlyList<string> Values)> RecipeDifferences { get; init; } = [];
}
