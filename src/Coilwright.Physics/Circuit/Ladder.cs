using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>
/// The closed-form network of <see cref="PickupResponse"/>, with everything that does not depend on frequency worked out once. Allocates
/// nothing per point.
/// </summary>
/// <remarks>
/// Z series branch; Y admittance across the pickup; a the track above the wiper, b the track below it, W admittance behind the wiper:
/// q = a(1 + bW) + b, output over pickup voltage b/q, admittance of the volume control with what hangs on it (1 + bW)/q,
/// p = 1 + Z·(Y + (1 + bW)/q), output over source b/(p·q). Multiplied through like this nothing divides by zero at either end of the track.
/// Without a volume control the same formulas hold with a = 0, b = 1 and d = 1 + bW replaced by W.
/// </remarks>
internal readonly struct Ladder : IGainCurve
{
    /// <summary>Keeps a network without any loss finite at its resonance.</summary>
    private const double LeastAttenuation = 1e-100;

    private readonly double resistanceOhm;
    private readonly double inductanceH;
    private readonly EddyBranch[] eddy;
    private readonly ISeriesBranch? other;
    private readonly double pickupSiemens;
    private readonly double pickupF;
    private readonly double toneOhm;
    private readonly double toneF;
    private readonly double aboveOhm;
    private readonly double belowOhm;
    private readonly double behindReal;
    private readonly double behindSeconds;

    public Ladder(ISeriesBranch source, double capacitanceF, double? parallelLossOhm, LoadCircuit load)
    {
        (resistanceOhm, inductanceH, eddy, other) = Unpack(source);
        pickupF = Require.InRange(capacitanceF, 0, 1e-3);
        pickupSiemens = Siemens(parallelLossOhm);
        ToneControl tone = load.Tone ?? new ToneControl(0, 0, 0);
        toneOhm = Require.InRange(tone.ResistanceOhm, 0, 1e9) * Require.InRange(tone.Setting, 0, 1);
        toneF = Require.InRange(tone.CapacitorF, 0, 1e-3);
        double behindF = Require.InRange(load.CableCapacitanceF, 0, 1e-3) + Require.InRange(load.InputCapacitanceF, 0, 1e-3);
        double behindSiemens = Siemens(load.InputResistanceOhm);
        if (load.Volume is { } volume)
        {
            double track = Require.InRange(volume.ResistanceOhm, 1e-3, 1e9);
            belowOhm = track * Require.InRange(volume.Setting, 0, 1);
            aboveOhm = track - belowOhm;
            (behindReal, behindSeconds) = (1 + belowOhm * behindSiemens, belowOhm * behindF);
        }
        else
        {
            belowOhm = 1;
            (behindReal, behindSeconds) = (behindSiemens, behindF);
        }
    }

    /// <summary>True when the wiper stands on ground.</summary>
    public bool IsSilent => belowOhm <= 0;

    /// <summary>Output over source at one frequency, as a ratio; 0 when silent.</summary>
    public double Gain(double frequencyHz) => belowOhm / Math.Sqrt(Solve(frequencyHz, out _, out _, out _));

    /// <summary>|p·q|² at one frequency: the gain's reciprocal, squared, without the factor b.</summary>
    public double Attenuation(double frequencyHz) => Solve(frequencyHz, out _, out _, out _);

    /// <summary>|p·q|², with the real and imaginary part of p·q and the squared magnitude of the output impedance.</summary>
    public double Solve(double frequencyHz, out double re, out double im, out double impedanceSquared)
    {
        double omega = 2 * Math.PI * frequencyHz;
        Series(frequencyHz, omega, out double zr, out double zi);

        double toneX = omega * toneF;
        double toneScale = toneX / (1 + toneX * toneOhm * toneX * toneOhm);
        double yr = pickupSiemens + toneScale * toneX * toneOhm;
        double yi = omega * pickupF + toneScale;

        // d = 1 + bW, q = a·d + b, and m = 1 + Z·Y, so that p·q = m·q + Z·d.
        double dr = behindReal,
            di = omega * behindSeconds;
        double qr = aboveOhm * dr + belowOhm,
            qi = aboveOhm * di;
        double mr = 1 + zr * yr - zi * yi,
            mi = zr * yi + zi * yr;
        re = mr * qr - mi * qi + zr * dr - zi * di;
        im = mr * qi + mi * qr + zr * di + zi * dr;
        double attenuation = Math.Max(re * re + im * im, LeastAttenuation);

        // Seen from the output: b·(a·m + Z)/(p·q).
        double nr = aboveOhm * mr + zr,
            ni = aboveOhm * mi + zi;
        impedanceSquared = belowOhm * belowOhm * ((nr * nr + ni * ni) / attenuation);
        return attenuation;
    }

    private static (double Ohm, double H, EddyBranch[] Eddy, ISeriesBranch? Other) Unpack(ISeriesBranch source)
    {
        if (source is not LumpedPickup lumped)
        {
            return (0, 0, [], source);
        }

        foreach (EddyBranch branch in lumped.Eddy)
        {
            Require.InRange(branch.InductanceH, 0, 1e5);
            Require.InRange(branch.ResistanceOhm, 0, 1e12);
        }

        return (Require.InRange(lumped.ResistanceOhm, 1e-6, 1e9), Require.InRange(lumped.InductanceH, 0, 1e5), [.. lumped.Eddy], null);
    }

    private static double Siemens(double? ohm) => ohm is { } value ? 1 / Require.InRange(value, 1e-3, 1e15) : 0;

    private void Series(double frequencyHz, double omega, out double re, out double im)
    {
        if (other is not null)
        {
            Complex z = other.ImpedanceOhm(frequencyHz);
            (re, im) = Complex.IsFinite(z)
                ? (z.Real, z.Imaginary)
                : throw new InvalidOperationException(
                    FormattableString.Invariant($"The series branch has no finite impedance at {frequencyHz} Hz.")
                );
            return;
        }

        re = resistanceOhm;
        im = omega * inductanceH;
        foreach (EddyBranch branch in eddy)
        {
            double x = omega * branch.InductanceH;
            double share = branch.ResistanceOhm > 0 ? x * branch.ResistanceOhm / (branch.ResistanceOhm * branch.ResistanceOhm + x * x) : 0;
            re += share * x;
            im += share * branch.ResistanceOhm;
        }
    }
}
