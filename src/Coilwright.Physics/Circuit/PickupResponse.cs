using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>What reaches the amplifier: the exact ladder of pickup, controls, cable and input.</summary>
/// <remarks>
/// The string's voltage stands behind the series branch. Across the pickup's wires hang its capacitance, its loss resistance, the tone control and
/// the volume control's track. The wiper divides the track: (1 − setting) in series, setting to ground, and cable and input hang on the wiper; without
/// a volume control they hang on the pickup. Checked against ngspice and the circuit cases of tests/Reference/circuit.
/// </remarks>
public static class PickupResponse
{
    /// <summary>Frequency of the level that gains are relative to, Hz.</summary>
    public const double ReferenceHz = 20;

    private const double LowestPeakHz = 20;
    private const double HighestPeakHz = 200_000;
    private const int ScanPoints = 96;

    /// <summary>The response at each of the frequencies.</summary>
    /// <param name="source">Series branch of the pickup.</param>
    /// <param name="capacitanceF">Capacitance across the pickup, F.</param>
    /// <param name="parallelLossOhm">Loss resistance across the pickup, Ω, or null.</param>
    /// <param name="load">What hangs on it.</param>
    /// <param name="frequenciesHz">Positive frequencies, Hz.</param>
    public static ResponsePoint[] Compute(
        ISeriesBranch source, double capacitanceF, double? parallelLossOhm, LoadCircuit load, ReadOnlySpan<double> frequenciesHz)
    {
        double reference = Transfer(source, capacitanceF, parallelLossOhm, load, ReferenceHz, out _).Magnitude;
        ResponsePoint[] points = new ResponsePoint[frequenciesHz.Length];
        for (int i = 0; i < points.Length; i++)
        {
            Complex transfer = Transfer(source, capacitanceF, parallelLossOhm, load, frequenciesHz[i], out Complex impedance);
            double gainDb = reference > 0 ? 20 * Math.Log10(transfer.Magnitude / reference) : double.NegativeInfinity;
            points[i] = new ResponsePoint(frequenciesHz[i], gainDb, transfer.Phase * 180 / Math.PI, impedance.Magnitude);
        }

        return points;
    }

    /// <summary>The highest point of the curve between 20 Hz and 200 kHz; null when the curve never rises above its level at 20 Hz.</summary>
    public static ResonancePeak? FindPeak(ISeriesBranch source, double capacitanceF, double? parallelLossOhm, LoadCircuit load)
    {
        double Level(double logHz) => Transfer(source, capacitanceF, parallelLossOhm, load, Math.Exp(logHz), out _).Magnitude;
        double low = Math.Log(LowestPeakHz), step = Math.Log(HighestPeakHz / LowestPeakHz) / (ScanPoints - 1);
        double reference = Level(low);
        int best = 0;
        double highest = reference;
        for (int i = 1; i < ScanPoints; i++)
        {
            double level = Level(low + i * step);
            if (level > highest)
            {
                (best, highest) = (i, level);
            }
        }

        if (best == 0 || reference <= 0)
        {
            return null;
        }

        double at = GoldenMaximum(Level, low + (best - 1) * step, low + (best + 1) * step);
        double ratio = Level(at) / reference;
        // Rounding alone may lift a flat curve by parts in 1e12; that is no peak.
        return ratio > 1 + 1e-9 ? new ResonancePeak(Math.Exp(at), 20 * Math.Log10(ratio), ratio) : null;
    }

    /// <summary>The last frequency, up to 200 kHz, at which the curve crosses 3 dB below its level at 20 Hz; null when it never falls so far.</summary>
    public static double? FindMinus3Db(ISeriesBranch source, double capacitanceF, double? parallelLossOhm, LoadCircuit load)
    {
        double reference = Transfer(source, capacitanceF, parallelLossOhm, load, ReferenceHz, out _).Magnitude * Math.Pow(10, -3.0 / 20);
        double Above(double logHz) => Transfer(source, capacitanceF, parallelLossOhm, load, Math.Exp(logHz), out _).Magnitude - reference;
        double high = Math.Log(HighestPeakHz), step = Math.Log(HighestPeakHz / LowestPeakHz) / (4 * ScanPoints);
        if (!(reference > 0) || Above(high) > 0)
        {
            return null;
        }

        for (int i = 1; i <= 4 * ScanPoints; i++)
        {
            if (Above(high - i * step) > 0)
            {
                return Math.Exp(Bisect(Above, high - i * step, high - (i - 1) * step));
            }
        }

        return null;
    }

    private static Complex Transfer(
        ISeriesBranch source, double capacitanceF, double? lossOhm, LoadCircuit load, double frequencyHz, out Complex impedanceOhm)
    {
        double omega = 2 * Math.PI * frequencyHz;
        Complex branch = source.ImpedanceOhm(frequencyHz);
        Complex across = new(lossOhm is { } loss ? 1 / loss : 0, omega * capacitanceF);
        if (load.Tone is { } tone)
        {
            across += 1 / (tone.ResistanceOhm * tone.Setting + 1 / new Complex(0, omega * tone.CapacitorF));
        }

        Complex behind = new(load.InputResistanceOhm is { } input ? 1 / input : 0, omega * (load.CableCapacitanceF + load.InputCapacitanceF));
        Complex divider = Complex.One;
        if (load.Volume is { } volume)
        {
            double shunt = volume.ResistanceOhm * volume.Setting, series = volume.ResistanceOhm - shunt;
            if (shunt <= 0)
            {
                behind = 1 / volume.ResistanceOhm;
                divider = Complex.Zero;
            }
            else
            {
                behind += 1 / shunt;
                divider = 1 / (1 + series * behind);
                behind *= divider;
            }
        }

        Complex loaded = 1 + branch * (across + behind);
        impedanceOhm = branch / loaded;
        return divider / loaded;
    }

    private static double GoldenMaximum(Func<double, double> level, double low, double high)
    {
        double ratio = (Math.Sqrt(5) - 1) / 2;
        double left = high - ratio * (high - low), right = low + ratio * (high - low);
        double atLeft = level(left), atRight = level(right);
        while (high - low > 1e-7)
        {
            if (atLeft < atRight)
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + ratio * (high - low);
                atRight = level(right);
            }
            else
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - ratio * (high - low);
                atLeft = level(left);
            }
        }

        return (low + high) / 2;
    }

    private static double Bisect(Func<double, double> above, double low, double high)
    {
        while (high - low > 1e-10)
        {
            double middle = (low + high) / 2;
            (low, high) = above(middle) > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
