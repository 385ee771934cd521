using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts;

/// <summary>One result of a whole pickup by its name in wants, runs and comparisons.</summary>
/// <param name="Name">For example "loadedPeak".</param>
/// <param name="Unit">SI unit as printed.</param>
/// <param name="Estimate">Value and 95 % interval; an end that is not finite where the quantity comes and goes within the interval, for
/// example a peak.</param>
public sealed record NamedFigure(string Name, string Unit, Estimate Estimate);
