namespace Coilwright.Analysis.Capability;

/// <summary>A capability index with its confidence interval.</summary>
/// <param name="Value">The index.</param>
/// <param name="Low">Lower end; equals the value when no interval is known.</param>
/// <param name="High">Upper end.</param>
public readonly record struct CapabilityIndex(double Value, double Low, double High);
