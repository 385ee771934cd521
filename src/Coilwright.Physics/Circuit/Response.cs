namespace Coilwright.Physics.Circuit;

/// <summary>One point of a response.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="GainDb">Level at the output relative to the level at 20 Hz, dB; −∞ with the volume control shut.</param>
/// <param name="PhaseDeg">Phase of the output against the string's voltage, degrees, −180…180.</param>
/// <param name="ImpedanceOhm">Magnitude of the impedance across the pickup's two wires with all that hangs on them, Ω.</param>
public readonly record struct ResponsePoint(double FrequencyHz, double GainDb, double PhaseDeg, double ImpedanceOhm);

/// <summary>The highest point of a response.</summary>
/// <param name="FrequencyHz">Where it lies, Hz.</param>
/// <param name="GainDb">Its height over the level at 20 Hz, dB; positive.</param>
/// <param name="Q">The height as a ratio of voltages: for a simple resonance this is its quality factor.</param>
public sealed record ResonancePeak(double FrequencyHz, double GainDb, double Q);
