namespace Coilwright.Physics.Circuit;

/// <summary>One point of a response.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="GainDb">Output over the voltage the string induces, dB relative to the same ratio at 20 Hz; −∞ when the output is
/// shorted.</param>
/// <param name="PhaseDegrees">Phase of the output against the induced voltage, degrees, continuous in −270…0 for passive networks; 0 when
/// the output is shorted.</param>
/// <param name="ImpedanceOhm">
/// Magnitude of the impedance between the output's two wires, Ω, with the pickup and its whole load in place: what the next stage or an
/// instrument sees there.
/// Without a load these are the pickup's own terminals.
/// </param>
public readonly record struct ResponsePoint(double FrequencyHz, double GainDb, double PhaseDegrees, double ImpedanceOhm);

/// <summary>A response: what arrives behind the load for a constant induced voltage.</summary>
/// <param name="Points">The points, in the order of the frequencies asked for.</param>
/// <param name="LowFrequencyGain">Ratio of output to induced voltage at 20 Hz, 0…1; 0 when the output is shorted.</param>
/// <param name="IsSilent">True when the volume control stands at 0: nothing arrives, every gain is −∞ and no peak exists. Look at it before
/// drawing or writing gains.</param>
public sealed record Response(IReadOnlyList<ResponsePoint> Points, double LowFrequencyGain, bool IsSilent)
{
    /// <summary>The gain at 20 Hz itself, dB relative to the induced voltage; −∞ when silent.</summary>
    public double LowFrequencyGainDb => IsSilent ? double.NegativeInfinity : 20 * Math.Log10(LowFrequencyGain);
}

/// <summary>The highest point of a response.</summary>
/// <param name="FrequencyHz">Where it stands, Hz.</param>
/// <param name="GainDb">How high, dB relative to 20 Hz; always above 0.</param>
/// <param name="Q">
/// Quality of the two-pole low-pass whose peak is as high: with M the peak's height as a ratio, Q² = M·(M + √(M² − 1))/2.
/// From 0.707 (no peak) upwards; close to M itself for a sharp peak. Defined for low peaks too, where no −3 dB width exists.
/// </param>
public readonly record struct ResonancePeak(double FrequencyHz, double GainDb, double Q);
