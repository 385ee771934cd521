using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>The ratio of two curves of one pickup behind one exciter, each with a known load: free of the exciter.</summary>
/// <remarks>
/// With Y the pickup's own admittance, capacitance included, and Y₀, Y₁ those of the loads, V₁/V₀ = (Y + Y₀)/(Y + Y₁): one complex
/// equation for Y at each frequency (Thévenin's theorem; arithmetic). Averaged over narrow bands, so that noise and a fine grid weigh no
/// more than they should.
/// </remarks>
public sealed class CurveRatio
{
    /// <summary>Bands a decade: narrow against the resonance of a bare pickup. Our choice, no source.</summary>
    private const int BandsPerDecade = 60;

    /// <summary>
    /// What gets into a curve past the pickup (leads, the instrument's own floor), as a part of the curve's highest value. Our choice after
    /// seeing measured curves, which level off 36 to 50 dB under their top.
    /// </summary>
    private const double Leakage = 0.005;

    /// <summary>Frequencies are one grid when they differ by less than this part. Our choice.</summary>
    private const double SameFrequency = 0.002;

    private CurveRatio(double[] frequenciesHz, Complex[] logRatio, double[] deviation, LoadCircuit before, LoadCircuit after)
    {
        FrequenciesHz = frequenciesHz;
        LogRatio = logRatio;
        Deviation = deviation;
        Before = before;
        After = after;
    }

    /// <summary>Lowest and highest frequency that a fit looks at, Hz.</summary>
    public const double FromHz = 80,
        ToHz = 12_000;

    /// <summary>Middle of each band, Hz.</summary>
    public double[] FrequenciesHz { get; }

    /// <summary>ln(V₁/V₀): nepers and radians.</summary>
    public Complex[] LogRatio { get; }

    /// <summary>Standard deviation of each: the scatter inside its band, and what gets in past the pickup where it is low.</summary>
    public double[] Deviation { get; }

    /// <summary>Load of the curve that is divided by.</summary>
    public LoadCircuit Before { get; }

    /// <summary>Load of the other curve.</summary>
    public LoadCircuit After { get; }

    /// <summary>True when two curves were read at the same frequencies.</summary>
    public static bool OneGrid(MeasuredCurve one, MeasuredCurve other) =>
        one.Count == other.Count
        && one.FrequenciesHz.Zip(other.FrequenciesHz).All(pair => Math.Abs(pair.Second / pair.First - 1) < SameFrequency);

    /// <summary>The ratio of two curves of gain and phase on one grid.</summary>
    /// <exception cref="ArgumentException">The grids differ, or a phase is missing.</exception>
    public static CurveRatio Of(MeasuredCurve before, LoadCircuit beforeLoad, MeasuredCurve after, LoadCircuit afterLoad)
    {
        if (!OneGrid(before, after) || before is not { GainDb: not null, PhaseDegrees: not null } || after.PhaseDegrees is null)
        {
            throw new ArgumentException("Two curves of gain and phase on one grid are needed.", nameof(after));
        }

        List<(double LogHz, Complex Value, double Leak)> points = [];
        double top = before.GainDb.Max(),
            topAfter = after.GainDb!.Max();
        for (int i = 0; i < before.Count; i++)
        {
            if (before.FrequenciesHz[i] is >= FromHz and <= ToHz)
            {
                double nepers = (after.GainDb![i] - before.GainDb[i]) * Math.Log(10) / 20;
                double turn = Math.IEEERemainder(after.PhaseDegrees[i] - before.PhaseDegrees[i], 360) * Math.PI / 180;
                double leak = Leakage * (Math.Pow(10, (top - before.GainDb[i]) / 20) + Math.Pow(10, (topAfter - after.GainDb[i]) / 20));
                points.Add((Math.Log(before.FrequenciesHz[i]), new Complex(nepers, turn), leak));
            }
        }

        var bands = points.GroupBy(point => Math.Round(point.LogHz / Math.Log(10) * BandsPerDecade)).Select(band => Average([.. band]));
        (double Hz, Complex Value, double Deviation)[] all = [.. bands];
        return new CurveRatio(
            [.. all.Select(band => band.Hz)],
            [.. all.Select(band => band.Value)],
            [.. all.Select(band => band.Deviation)],
            beforeLoad,
            afterLoad
        );
    }

    /// <summary>ln(V₁/V₀) for a pickup whose whole impedance is known, and its derivative by that impedance.</summary>
    /// <param name="impedanceOhm">Impedance at the terminals, capacitance included, Ω.</param>
    /// <param name="before">Admittance of the load of the curve that is divided by, S.</param>
    /// <param name="after">Admittance of the other load, S.</param>
    public static (Complex Log, Complex Slope) Model(Complex impedanceOhm, Complex before, Complex after)
    {
        Complex one = 1 + before * impedanceOhm,
            other = 1 + after * impedanceOhm;
        return (Complex.Log(one) - Complex.Log(other), before / one - after / other);
    }

    /// <summary>The pickup's impedance as the ratio gives it, where the loads differ enough to tell; sorted by frequency.</summary>
    public MeasuredCurve Impedance()
    {
        List<(double Hz, Complex Ohm)> told = [];
        for (int i = 0; i < FrequenciesHz.Length; i++)
        {
            Complex ratio = Complex.Exp(LogRatio[i]),
                before = LoadAdmittance.At(Before, FrequenciesHz[i]),
                after = LoadAdmittance.At(After, FrequenciesHz[i]),
                own = (before - ratio * after) / (ratio - 1);
            if ((ratio - 1).Magnitude > 0.1 && own.Magnitude > 0)
            {
                told.Add((FrequenciesHz[i], 1 / own));
            }
        }

        return new MeasuredCurve([.. told.Select(one => one.Hz)]) { ImpedanceOhm = [.. told.Select(one => one.Ohm)] };
    }

    /// <summary>Middle of a band along its own slope, with the scatter of its mean.</summary>
    private static (double Hz, Complex Value, double Deviation) Average((double LogHz, Complex Value, double Leak)[] band)
    {
        double middle = band.Average(point => point.LogHz);
        Complex first = band[0].Value;
        Complex[] turned = [.. band.Select(point => Near(point.Value, first))];
        Complex mean = turned.Aggregate(Complex.Zero, (sum, value) => sum + value) / band.Length;
        double leak = band.Average(point => point.Leak);
        if (band.Length < 4)
        {
            return (Math.Exp(middle), mean, leak);
        }

        double spread = band.Sum(point => Math.Pow(point.LogHz - middle, 2));
        Complex slope = band.Zip(turned).Aggregate(Complex.Zero, (sum, pair) => sum + (pair.First.LogHz - middle) * pair.Second) / spread;
        double rest = band.Zip(turned).Sum(pair => Square(pair.Second - mean - slope * (pair.First.LogHz - middle)));
        return (Math.Exp(middle), mean, Math.Sqrt(leak * leak + rest / (2 * (band.Length - 2)) / band.Length));
    }

    private static double Square(Complex z) => z.Real * z.Real + z.Imaginary * z.Imaginary;

    /// <summary>The same angle within half a turn of another.</summary>
    private static Complex Near(Complex value, Complex other) =>
        new(value.Real, other.Imaginary + Math.IEEERemainder(value.Imaginary - other.Imaginary, 2 * Math.PI));
}
