namespace Coilwright.Physics.Strings;

/// <summary>How fast a string's partials die away: σ(f) = a + b·f², so that high ones go first.</summary>
/// <param name="SlowestPerS">a: decay of the lowest partials, 1/s, 0…1000.</param>
/// <param name="PerSPerKhz2">b: what each kHz squared adds, 1/s, 0…1000.</param>
/// <remarks>The form is that of a stiff string with two losses [StringLoss]; the usual values are our assumption.</remarks>
public readonly record struct StringDecay(double SlowestPerS, double PerSPerKhz2)
{
    /// <summary>A metal string on a solid body, plucked: about 9 s to −60 dB at the bottom, 2 s at 2 kHz; assumed.</summary>
    public static StringDecay Usual { get; } = new(0.75, 0.7);

    /// <summary>Decay of one partial, 1/s: its amplitude falls as e^(−σt).</summary>
    /// <param name="hz">Its frequency, Hz.</param>
    public double PerS(double hz) => SlowestPerS + PerSPerKhz2 * hz * hz * 1e-6;
}
