namespace Coilwright.Application.Comparisons;

/// <summary>What is to be compared.</summary>
/// <param name="Designs">Recipes in their order; null for a place left empty.</param>
/// <param name="Pinned">Place of the one that the others are told against.</param>
/// <param name="LoadJson">A load document.</param>
/// <param name="Loads">Keys of usual loads besides.</param>
/// <param name="Bare">Whether the unloaded curves are wanted too.</param>
/// <param name="Curve">A measured curve as a table; empty for none.</param>
public sealed record CompareQuestion(
    IReadOnlyList<Guid?> Designs,
    int Pinned,
    string LoadJson,
    IReadOnlyList<string> Loads,
    bool Bare,
    string Curve
);
