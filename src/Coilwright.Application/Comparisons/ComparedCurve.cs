using Coilwright.Analysis.Comparisons;
using Coilwright.Physics.Circuit;

namespace Coilwright.Application.Comparisons;

/// <summary>One design on one load.</summary>
/// <param name="Design">The design.</param>
/// <param name="LoadName">What the load is called.</param>
/// <param name="Load">The load.</param>
/// <param name="Peak">Its peak, if it has one.</param>
/// <param name="Response">Its response at the common frequencies.</param>
/// <param name="Lines">What it does against the pinned design; null for a measured one.</param>
public sealed record ComparedCurve(
    ComparedDesign Design,
    string LoadName,
    LoadCircuit Load,
    ResonancePeak? Peak,
    Response Response,
    IReadOnlyList<ComparisonLine>? Lines
);
