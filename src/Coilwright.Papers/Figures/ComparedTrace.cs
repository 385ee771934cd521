using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Figures;

/// <summary>One curve of a comparison.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="GainDb">Its gain at the common frequencies, relative to its own level at 20 Hz; null where it has none.</param>
/// <param name="Peak">Its peak; null without one.</param>
public sealed record ComparedTrace(string Name, IReadOnlyList<double?> GainDb, ResonancePeak? Peak);
