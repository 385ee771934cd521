namespace Coilwright.Physics.Sound;

/// <summary>A sine whose frequency rises exponentially: x(t) = sin(2π·f₁·L·(e^(t/L) − 1)), L = T/ln(f₂/f₁) [Farina].</summary>
/// <param name="FromHz">First frequency f₁, Hz, 1…100,000.</param>
/// <param name="ToHz">Last frequency f₂, Hz, at least 1.5 times the first.</param>
/// <param name="LengthS">Length T, s, 0.1…120.</param>
/// <remarks>
/// Deconvolved, what the chain distorts into harmonic m stands L·ln m before the response itself, so that a window keeps it out.
/// </remarks>
public sealed record LogSweep(double FromHz, double ToHz, double LengthS)
{
    private const double FadeInS = 0.05,
        FadeOutS = 0.01;

    /// <summary>Time in which the frequency grows e-fold, s.</summary>
    public double GrowthS => LengthS / Math.Log(ToHz / FromHz);

    /// <summary>When a frequency is reached, s.</summary>
    /// <param name="hz">The frequency, Hz, above zero.</param>
    public double TimeOf(double hz) => GrowthS * Math.Log(hz / FromHz);

    /// <summary>By how much harmonic m stands before the response, s.</summary>
    /// <param name="harmonic">m, above zero; 1 is the response itself.</param>
    public double AdvanceOf(double harmonic) => GrowthS * Math.Log(harmonic);

    /// <summary>The samples, faded in and out so that no click stands at its ends.</summary>
    /// <param name="rateHz">Samples per second, 4,000…400,000 and at least twice the last frequency.</param>
    /// <param name="level">Largest value, 0…1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate or a number of the sweep lies outside its range.</exception>
    public double[] Samples(double rateHz, double level = 1)
    {
        Require.InRange(FromHz, 1, 1e5);
        Require.InRange(ToHz, FromHz * 1.5, rateHz / 2);
        double[] samples = new double[(int)Math.Round(Require.InRange(LengthS, 0.1, 120) * Require.InRange(rateHz, 4000, 400_000))];
        for (int i = 0; i < samples.Length; i++)
        {
            double t = i / rateHz,
                left = (samples.Length - 1 - i) / rateHz;
            samples[i] =
                level * Fade(t / FadeInS) * Fade(left / FadeOutS) * Math.Sin(2 * Math.PI * FromHz * GrowthS * (Math.Exp(t / GrowthS) - 1));
        }

        return samples;
    }

    private static double Fade(double part) => part >= 1 ? 1 : 0.5 - 0.5 * Math.Cos(Math.PI * part);
}
