namespace Coilwright.Physics.Strings;

/// <summary>One partial of a plucked string. SI units.</summary>
/// <param name="Number">n, from 1.</param>
/// <param name="FrequencyHz">Its frequency, Hz.</param>
/// <param name="DecayPerS">Its decay σ, 1/s.</param>
/// <param name="DisplacementM">Its amplitude where it is largest, m, signed.</param>
public readonly record struct StringPartial(int Number, double FrequencyHz, double DecayPerS, double DisplacementM)
{
    /// <summary>
    /// Amplitude of its velocity, m/s: released from rest, a damped partial moves as −a·(ω² + σ²)/ω·e^(−σt)·sin ωt, exactly.
    /// </summary>
    public double VelocityMPerS
    {
        get
        {
            double omega = 2 * Math.PI * FrequencyHz;
            return -DisplacementM * (omega * omega + DecayPerS * DecayPerS) / omega;
        }
    }
}
