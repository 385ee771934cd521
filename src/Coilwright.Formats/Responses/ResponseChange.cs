using Coilwright.Physics.Circuit;

namespace Coilwright.Formats.Responses;

/// <summary>
/// The change from another response: gain at each point, dB, each relative to its own 20 Hz; its peak; the change of the level at 20 Hz,
/// dB.
/// </summary>
public sealed record ResponseChange(string Name, IReadOnlyList<double> GainDb, ResonancePeak? Peak, double LevelDb);
