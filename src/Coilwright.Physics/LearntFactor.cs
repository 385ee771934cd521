namespace Coilwright.Physics;

/// <summary>What a shop's own readings say that a forecast is to be multiplied by.</summary>
/// <param name="Factor">The factor, above 0.</param>
/// <param name="Half">Half-width of its 95 % interval, of its logarithm.</param>
/// <param name="CoilHalf">Half-width of the 95 % interval of single good coils about it, of the logarithm.</param>
/// <param name="Source">From which set, of when, and from how many coils.</param>
public sealed record LearntFactor(double Factor, double Half, double CoilHalf, string Source);

/// <summary>What was learnt of one coil; null where nothing was.</summary>
/// <param name="DcResistance">Of its DC resistance on the wire that is meant.</param>
/// <param name="OnMeasuredWire">Of its DC resistance on wire whose ohms per metre were measured.</param>
/// <param name="Inductance">Of its inductance.</param>
public sealed record LearntCoil(LearntFactor? DcResistance, LearntFactor? OnMeasuredWire, LearntFactor? Inductance);
