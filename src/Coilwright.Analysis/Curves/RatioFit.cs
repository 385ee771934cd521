using System.Numerics;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>
/// Fits a pickup to two or more curves that were read behind one exciter with known loads, through their ratios: what the exciter does is
/// in all of them and drops out, so that any exciter coil and sound card measure an impedance.
/// </summary>
/// <remarks>
/// Residual: ln of the ratio, nepers and radians, over √(s² + m²): s the scatter inside a band, m what two readings of one pickup differ by
/// and a few branches miss of a real one (0.02, our assumption, no source). Each ratio has a level of its own beside, held near none. What
/// hangs on the pickup in every reading (the input of the
/// instrument, its leads) is taken as part of the pickup's capacitance and loss.
/// </remarks>
/// <param name="Fit">Parts, intervals and what the ratios cannot tell.</param>
/// <param name="Ratios">The ratios, each to the first curve.</param>
/// <param name="MissedDb">Of each ratio the root mean square of level and angle missed, both as dB (8.69 dB a radian).</param>
public sealed record RatioFit(CurveFit Fit, IReadOnlyList<CurveRatio> Ratios, IReadOnlyList<double> MissedDb)
{
    /// <summary>Most eddy branches that are tried.</summary>
    public const int MostEddy = 2;

    /// <summary>A ratio missed by more, dB, is none of one pickup's curves, or too noisy to say. Our choice, no source.</summary>
    public const double MostMissedDb = 2;

    /// <summary>Places of the ratios, from 0, that no pickup with these loads explains; empty when all agree.</summary>
    public IReadOnlyList<int> Contradicting => [.. Enumerable.Range(0, MissedDb.Count).Where(at => MissedDb[at] > MostMissedDb)];

    /// <summary>By how many dB the level of each ratio was moved: drive or place changed between two curves.</summary>
    public IReadOnlyList<double> MovedDb => [.. Fit.Fit.Parameters[Fit.Parts.Count..].Select(nepers => -DbPerNeper * nepers)];

    /// <summary>
    /// How well a reading's level is repeated when the load is changed (coil moved, drive turned), nepers: 1 dB. Our assumption after
    /// seeing measured curves, no source.
    /// </summary>
    private const double LevelDeviation = 0.115;

    private const double LeastDeviation = 0.02;

    private const double DbPerNeper = 8.685889638065035;

    /// <summary>Ends of what a pickup can be, as logarithms of R, L, C, loss: a step of the fit outside them is held.</summary>
    private const double MostLog = 80;

    /// <summary>Chooses the parts by the Bayesian information criterion [Information] and fits them.</summary>
    /// <param name="ratios">One ratio or more.</param>
    /// <param name="eddyCount">Eddy branches, 0…2; null lets the data decide.</param>
    /// <exception cref="ArgumentException">The ratios tell no impedance anywhere: the loads are too much alike.</exception>
    public static RatioFit Find(IReadOnlyList<CurveRatio> ratios, int? eddyCount = null)
    {
        MeasuredCurve[] impedances =
        [
            .. ratios.Select(ratio => ratio.Impedance()).Where(curve => curve.Count >= ImpedanceFit.FewestPoints),
        ];
        if (impedances.Length == 0)
        {
            throw new ArgumentException("The loads of the curves are too much alike.", nameof(ratios));
        }

        Points points = new(ratios);
        CurveFit? best = null;
        double least = double.PositiveInfinity;
        foreach (int eddies in eddyCount is { } count ? [count] : Enumerable.Range(0, MostEddy + 1))
        {
            foreach (bool loss in (bool[])[false, true])
            {
                PickupParts parts = new(eddies, loss);
                if (points.Residuals <= parts.Count + ratios.Count || Search(points, parts, impedances) is not { } fit)
                {
                    continue;
                }

                double criterion = points.Residuals * Math.Log(fit.Fit.ResidualSum / points.Residuals + 1e-12);
                criterion += parts.Count * Math.Log(points.Residuals);
                if (best is null || criterion < least - 6)
                {
                    (best, least) = (fit, criterion);
                }
            }
        }

        CurveFit found = best ?? throw new ArgumentException("Too few points.", nameof(ratios));
        return new RatioFit(found, ratios, [.. ratios.Select((_, at) => points.MissedDb(found, at))]);
    }

    /// <summary>What the level with one load is against that with another, dB, with the 95 % interval of a reading.</summary>
    /// <param name="before">The load that is compared with, straight across.</param>
    /// <param name="after">The load that is asked for, straight across.</param>
    /// <param name="frequencyHz">Frequency, Hz.</param>
    public Estimate LevelDb(LoadCircuit before, LoadCircuit after, double frequencyHz)
    {
        Complex one = LoadAdmittance.At(before, frequencyHz),
            other = LoadAdmittance.At(after, frequencyHz);
        Estimate fitted = Fit.Derived(pickup => DbPerNeper * CurveRatio.Model(Terminal(pickup, frequencyHz), one, other).Log.Real);
        double parts = (fitted.High - fitted.Low) / 2 / 1.96,
            reading = DbPerNeper * LeastDeviation * Fit.Fit.ResidualDeviation,
            level = DbPerNeper * LevelDeviation;
        return Estimate.FromDeviation(fitted.Value, Math.Sqrt(parts * parts + reading * reading + level * level), Basis.Measured);
    }

    /// <summary>Impedance at a pickup's terminals, Ω: with its capacitance and loss.</summary>
    private static Complex Terminal(LumpedPickup pickup, double hz) =>
        1
        / (
            1 / pickup.ImpedanceOhm(hz)
            + new Complex(pickup.ParallelLossOhm is { } loss ? 1 / loss : 0, 2 * Math.PI * hz * pickup.CapacitanceF)
        );

    private static CurveFit? Search(Points points, PickupParts parts, MeasuredCurve[] impedances)
    {
        LeastSquaresFit? best = null;
        foreach (double[] start in impedances.SelectMany(curve => ImpedanceStart.For(parts, curve)))
        {
            if (!start.All(double.IsFinite))
            {
                continue;
            }

            LeastSquaresFit fit = LevenbergMarquardt.Minimise(
                (p, residuals, jacobian) => points.Evaluate(parts, p, residuals, jacobian),
                points.Residuals,
                [.. start, .. new double[points.Ratios]],
                mostSteps: 80,
                firstReach: 0.1,
                tolerance: 1e-9
            );
            best = best is null || fit.ResidualSum < best.ResidualSum ? fit : best;
        }

        return best is null ? null : new CurveFit(parts, parts.CreatePickup(best.Parameters), best, CurveFit.FindUntold(parts, best));
    }

    /// <summary>All bands of all ratios, with the admittances of their loads.</summary>
    private sealed class Points
    {
        private readonly double[] _omega;
        private readonly Complex[] _before;
        private readonly Complex[] _after;
        private readonly Complex[] _measured;
        private readonly double[] _weight;
        private readonly int[] _ratio;

        public Points(IReadOnlyList<CurveRatio> ratios)
        {
            Ratios = ratios.Count;
            _omega = [.. ratios.SelectMany(ratio => ratio.FrequenciesHz).Select(hz => 2 * Math.PI * hz)];
            _before = [.. ratios.SelectMany(ratio => ratio.FrequenciesHz.Select(hz => LoadAdmittance.At(ratio.Before, hz)))];
            _after = [.. ratios.SelectMany(ratio => ratio.FrequenciesHz.Select(hz => LoadAdmittance.At(ratio.After, hz)))];
            _measured = [.. ratios.SelectMany(ratio => ratio.LogRatio)];
            _weight = [.. ratios.SelectMany(ratio => ratio.Deviation).Select(s => 1 / Math.Sqrt(s * s + LeastDeviation * LeastDeviation))];
            _ratio = [.. ratios.SelectMany((ratio, at) => Enumerable.Repeat(at, ratio.FrequenciesHz.Length))];
        }

        public int Ratios { get; }

        /// <summary>Real and imaginary parts, and one for the level of each ratio.</summary>
        public int Residuals => 2 * _omega.Length + Ratios;

        public void Evaluate(PickupParts parts, ReadOnlySpan<double> p, Span<double> residuals, Span<double> jacobian)
        {
            int count = _omega.Length,
                rows = Residuals;
            jacobian.Clear();
            ReadOnlySpan<double> levels = p[parts.Count..];
            Span<double> values = stackalloc double[parts.Count];
            for (int i = 0; i < values.Length; i++)
            {
                values[i] = Math.Exp(Math.Clamp(p[i], -MostLog, MostLog));
            }

            Span<Complex> slopes = stackalloc Complex[jacobian.Length > 0 ? parts.Count : 0];
            for (int k = 0; k < count; k++)
            {
                double weight = _weight[k];
                (Complex log, Complex slope) = CurveRatio.Model(parts.Impedance(values, _omega[k], slopes), _before[k], _after[k]);
                Complex apart = Apart(log + levels[_ratio[k]], k) * weight;
                (residuals[k], residuals[count + k]) = (apart.Real, apart.Imaginary);
                for (int i = 0; i < slopes.Length; i++)
                {
                    Complex by = slope * slopes[i] * weight;
                    (jacobian[i * rows + k], jacobian[i * rows + count + k]) = (by.Real, by.Imaginary);
                }

                if (jacobian.Length > 0)
                {
                    jacobian[(parts.Count + _ratio[k]) * rows + k] = weight;
                }
            }

            for (int ratio = 0; ratio < Ratios; ratio++)
            {
                residuals[2 * count + ratio] = levels[ratio] / LevelDeviation;
                if (jacobian.Length > 0)
                {
                    jacobian[(parts.Count + ratio) * rows + 2 * count + ratio] = 1 / LevelDeviation;
                }
            }
        }

        public double MissedDb(CurveFit fit, int ratio)
        {
            double[] residuals = new double[Residuals];
            Evaluate(fit.Parts, fit.Fit.Parameters, residuals, []);
            int count = _omega.Length;
            double[] squares =
            [
                .. Enumerable
                    .Range(0, count)
                    .Where(k => _ratio[k] == ratio)
                    .Select(k => (Math.Pow(residuals[k], 2) + Math.Pow(residuals[count + k], 2)) / Math.Pow(_weight[k], 2)),
            ];
            return DbPerNeper * Math.Sqrt(squares.Average() / 2);
        }

        private Complex Apart(Complex log, int k) =>
            new(log.Real - _measured[k].Real, Math.IEEERemainder(log.Imaginary - _measured[k].Imaginary, 2 * Math.PI));
    }
}
