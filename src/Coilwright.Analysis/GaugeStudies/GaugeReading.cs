namespace Coilwright.Analysis.GaugeStudies;

/// <summary>One reading of a gauge study.</summary>
/// <param name="Part">The coil or resistor.</param>
/// <param name="Person">Who read it.</param>
/// <param name="Value">What the meter showed.</param>
public sealed record GaugeReading(string Part, string Person, double Value);
