using Coilwright.Analysis.Capability;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>One capability index.</summary>
/// <param name="Name">Cp, Cpk, Pp or Ppk.</param>
/// <param name="Index">Value with its 95 % interval.</param>
/// <param name="Basis">What sigma or which percentiles it rests on.</param>
public sealed record ChartCapabilityIndex(string Name, CapabilityIndex Index, string Basis);
