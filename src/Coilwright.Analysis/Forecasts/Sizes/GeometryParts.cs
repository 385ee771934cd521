using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>A geometry as it is solved.</summary>
/// <param name="Model">What the field is solved of.</param>
/// <param name="Covered">The same with its covers and plates in their places, for the capacitances.</param>
/// <param name="BuildsM">Build of each coil, m.</param>
/// <param name="Turns">Turns of each coil over those of the first.</param>
internal sealed record GeometryParts(PickupModel Model, PickupModel Covered, double[] BuildsM, double[] Turns);
