namespace Coilwright.Application.Measuring;

/// <summary>A recording of the measurement signal, and how it was made, as typed; what is empty was not said.</summary>
/// <param name="Name">What the recording is called.</param>
/// <param name="Wave">The file.</param>
/// <param name="Signal">The signal that was played.</param>
/// <param name="Resistor">The resistor between the two channels.</param>
public sealed record RecordingQuestion(string Name, ReadOnlyMemory<byte> Wave, SignalQuestion Signal, string Resistor)
{
    /// <summary>Input resistance of the second channel.</summary>
    public string InputResistance { get; init; } = "";

    /// <summary>Capacitance of the second channel and its leads.</summary>
    public string InputCapacitance { get; init; } = "";
}
