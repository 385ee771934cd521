using Coilwright.Physics.Circuit;

namespace Coilwright.Formats.Responses;

/// <summary>A response: its curve, its peak if it has one, and the last crossing of −3 dB.</summary>
public sealed record ResponseAnswer(IReadOnlyList<ResponseLine> Lines, ResonancePeak? Peak, double? Minus3DbHz)
{
    /// <summary>Gain at 20 Hz, dB relative to the induced voltage.</summary>
    public double LevelDb { get; init; }

    /// <summary>Thermal noise at the output, dBV.</summary>
    public double NoiseDbv { get; init; }

    /// <summary>Points at frequencies asked for by name.</summary>
    public IReadOnlyList<ResponseLine> Marks { get; init; } = [];

    public ResponseChange? Against { get; init; }
}
