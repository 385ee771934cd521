namespace Coilwright.Bench;

/// <summary>One number as an instrument sent it.</summary>
/// <param name="Value">The number; null when the instrument said "over range" or "not a number".</param>
/// <param name="IsOverRange">The instrument had no end to its scale: on resistance, an open coil.</param>
/// <param name="Line">The line, without its ending.</param>
public sealed record MeterReading(double? Value, bool IsOverRange, string Line);
