using Coilwright.Analysis.Forecasts;

namespace Coilwright.Analysis.Comparisons;

/// <summary>What one small change of a recipe does to its results.</summary>
/// <param name="Change">Key of the file format, for example "thickerWire".</param>
/// <param name="Words">The change in workshop words, for example "wire 1 % thicker".</param>
/// <param name="WhyNot">Why the change cannot be made; null when it can.</param>
/// <param name="Effects">Results of the recipe against those of the changed one; empty when the change cannot be made.</param>
/// <param name="Warnings">What the changed recipe's forecast warns of and the recipe's own does not.</param>
public sealed record SensitivityLine(
    string Change,
    string Words,
    string? WhyNot,
    IReadOnlyList<ComparisonLine> Effects,
    IReadOnlyList<ForecastWarning> Warnings
);
