namespace Coilwright.Physics.Sound;

/// <summary>A sum of damped sines A·e^(−σt)·sin(2πft), all from the first sample on.</summary>
public static class DampedSines
{
    /// <summary>A sine that has fallen to this part of its start is left out from there on.</summary>
    private const double Gone = 1e-9;

    /// <summary>Samples of the sum.</summary>
    /// <param name="sines">Amplitude, frequency in Hz and decay σ in 1/s of each.</param>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="count">Number of samples.</param>
    public static double[] Samples(IReadOnlyList<(double Amplitude, double Hz, double DecayPerS)> sines, double rateHz, int count)
    {
        double[] sum = new double[count];
        foreach ((double amplitude, double hz, double decay) in sines)
        {
            double end = decay > 0 ? Math.Min(count, Math.Ceiling(-Math.Log(Gone) / decay * rateHz)) : count;
            Add(sum.AsSpan(0, (int)end), amplitude, 2 * Math.PI * hz / rateHz, Math.Exp(-decay / rateHz));
        }

        return sum;
    }

    /// <summary>s(i + 1) = 2r·cos θ·s(i) − r²·s(i − 1) gives rⁱ·sin θi without a sine per sample.</summary>
    private static void Add(Span<double> sum, double amplitude, double turn, double fall)
    {
        double twice = 2 * fall * Math.Cos(turn),
            squared = fall * fall,
            now = 0,
            next = amplitude * fall * Math.Sin(turn);
        for (int i = 0; i < sum.Length; i++)
        {
            sum[i] += now;
            (now, next) = (next, twice * next - squared * now);
        }
    }
}
