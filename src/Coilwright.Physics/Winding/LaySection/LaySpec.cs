namespace Coilwright.Physics.Winding;

/// <summary>What the lay of a section depends on. SI units.</summary>
/// <param name="OverallM">Diameter over the enamel, m, 5 µm…1 mm.</param>
/// <param name="WindingHeightM">Space between the flanges, m, three diameters…1 m.</param>
/// <param name="Turns">Turns, 1…100,000.</param>
/// <param name="PitchM">Traverse travel per turn, m, 1 µm…1 m.</param>
/// <param name="JitterM">Wander of the guide about its place, one standard deviation, m, 0…1.</param>
public sealed record LaySpec(double OverallM, double WindingHeightM, int Turns, double PitchM, double JitterM);
