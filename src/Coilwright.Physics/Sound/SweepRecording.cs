using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Coilwright.Physics.Sound;

/// <summary>What a recording of a sweep says: the complex transfer from the sweep to each recorded channel.</summary>
/// <remarks>
/// The recording over the sweep in the frequency domain is the impulse response of the chain, with its distortion before it; a window
/// around its largest value keeps
/// the linear part. Between two channels of one recording delay and response of the interface fall out.
/// </remarks>
public sealed class SweepRecording
{
    /// <summary>How much of the response is kept behind and before its largest value, s.</summary>
    private const double KeptS = 0.5,
        BeforeS = 0.02;

    /// <summary>The division is held at this part of the sweep's mean power outside its band.</summary>
    private const double Floor = 1e-4;

    private readonly double rateHz;
    private readonly double[][] responses;
    private readonly int before;

    private SweepRecording(double rateHz, double[][] responses, int before, double clearnessDb) =>
        (this.rateHz, this.responses, this.before, ClearnessDb) = (rateHz, responses, before, clearnessDb);

    /// <summary>Largest value of the first channel's response over the scatter far from it, dB; below 20 the sweep was not found.</summary>
    public double ClearnessDb { get; }

    /// <summary>Deconvolves every channel; the first one sets the time.</summary>
    /// <param name="sweep">The sweep that was played.</param>
    /// <param name="rateHz">Samples per second of the recording.</param>
    /// <param name="channels">Its channels, equally long, at least as long as the sweep; one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate or a number of the sweep lies outside its range.</exception>
    public static SweepRecording Deconvolve(LogSweep sweep, double rateHz, IReadOnlyList<double[]> channels)
    {
        double[] played = sweep.Samples(rateHz);
        int length = (int)BitOperations.RoundUpToPowerOf2((uint)(channels[0].Length + played.Length));
        Complex[] spectrum = Spectrum(played, length);
        double mean = spectrum.Sum(one => one.Real * one.Real + one.Imaginary * one.Imaginary) / length,
            hold = Floor * mean;
        double[][] whole = [.. channels.Select(channel => Impulse(channel, spectrum, hold, length))];
        int top = Enumerable.Range(0, length).MaxBy(i => Math.Abs(whole[0][i]));
        int before = (int)(Math.Min(BeforeS, sweep.AdvanceOf(2) / 2) * rateHz),
            kept = before + (int)(KeptS * rateHz);
        return new SweepRecording(rateHz, [.. whole.Select(one => Windowed(one, top, before, kept))], before, Clearness(whole[0], top));
    }

    /// <summary>Complex transfer from the sweep to a channel at one frequency.</summary>
    /// <param name="channel">Number of the channel, from 0.</param>
    /// <param name="hz">Frequency, Hz.</param>
    public Complex TransferAt(int channel, double hz)
    {
        double turn = -2 * Math.PI * hz / rateHz;
        Complex step = Complex.FromPolarCoordinates(1, turn),
            now = Complex.FromPolarCoordinates(1, -turn * before),
            sum = Complex.Zero;
        foreach (double value in responses[channel])
        {
            sum += value * now;
            now *= step;
        }

        return sum;
    }

    /// <summary>
    /// Impedance of what hangs between the second channel's joint and ground, Ω: Z = R·V₂/(V₁ − V₂), freed of the second input's own
    /// resistance and capacitance.
    /// </summary>
    /// <param name="hz">Frequency, Hz.</param>
    /// <param name="resistorOhm">The resistor between the two, Ω.</param>
    /// <param name="inputOhm">Input resistance of the second channel, Ω; null for none.</param>
    /// <param name="inputF">Capacitance of input and leads, F.</param>
    public Complex ImpedanceOhm(double hz, double resistorOhm, double? inputOhm, double inputF)
    {
        Complex first = TransferAt(0, hz),
            second = TransferAt(1, hz),
            seen = resistorOhm * second / (first - second);
        return 1 / (1 / seen - new Complex(inputOhm is { } ohm ? 1 / ohm : 0, 2 * Math.PI * hz * inputF));
    }

    private static Complex[] Spectrum(double[] samples, int length)
    {
        Complex[] values = new Complex[length];
        for (int i = 0; i < samples.Length; i++)
        {
            values[i] = samples[i];
        }

        Fourier.Forward(values, FourierOptions.Matlab);
        return values;
    }

    private static double[] Impulse(double[] channel, Complex[] played, double hold, int length)
    {
        Complex[] values = Spectrum(channel, length);
        for (int i = 0; i < length; i++)
        {
            Complex sweep = played[i];
            values[i] *= Complex.Conjugate(sweep) / Math.Max(sweep.Real * sweep.Real + sweep.Imaginary * sweep.Imaginary, hold);
        }

        Fourier.Inverse(values, FourierOptions.Matlab);
        return [.. values.Select(value => value.Real)];
    }

    private static double[] Windowed(double[] whole, int top, int before, int kept)
    {
        double[] part = new double[kept];
        for (int i = 0; i < kept; i++)
        {
            double rise = Math.Min(1, (i + 0.5) / (0.5 * before)),
                fall = Math.Min(1, (kept - i - 0.5) / (0.3 * kept));
            double weight = (0.5 - 0.5 * Math.Cos(Math.PI * rise)) * (0.5 - 0.5 * Math.Cos(Math.PI * fall));
            part[i] = weight * whole[(top - before + i + whole.Length) % whole.Length];
        }

        return part;
    }

    private static double Clearness(double[] whole, int top)
    {
        int away = whole.Length / 4;
        double scatter =
            Enumerable.Range(0, whole.Length / 8).Sum(i => Math.Pow(whole[(top + away + i) % whole.Length], 2)) / (whole.Length / 8);
        return 20 * Math.Log10(Math.Abs(whole[top]) / Math.Max(Math.Sqrt(scatter), 1e-12 * Math.Abs(whole[top]) + 1e-300));
    }
}
