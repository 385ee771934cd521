using System.Numerics;

namespace Coilwright.Analysis.Curves;

/// <summary>Fits R, L, C, a loss resistance and eddy branches to a measured complex impedance.</summary>
/// <remarks>
/// Residual: (Z − measured)/|measured|, real and imaginary part, so that a meter's relative error counts alike at every frequency. Which
/// parts are used is chosen
/// by the Bayesian information criterion (Schwarz 1978, from memory) [Information]: m·ln(RSS/m) + p·ln m, least wins; residuals below a
/// millionth count as that, so that exact curves do not call
/// for parts that are not there. Intervals come from the scatter around the fit: a systematic error of the instrument is not in them.
/// </remarks>
public static class ImpedanceFit
{
    /// <summary>Most eddy branches that are tried.</summary>
    public const int MostEddy = 3;

    /// <summary>Fewest points: more figures than the simplest pickup has parts.</summary>
    public const int FewestPoints = 4;

    private const double LeastResidual = 1e-6;

    /// <summary>For choosing among starts, and for the answer: the sum of squares settles to this part of itself.</summary>
    private const double LooseTolerance = 1e-5,
        FineTolerance = 1e-11;

    /// <summary>Chooses the parts and fits them.</summary>
    /// <param name="curve">A curve of impedance with at least <see cref="FewestPoints"/> points.</param>
    /// <param name="eddyCount">Eddy branches, 0…3; null lets the data decide.</param>
    public static CurveFit Fit(MeasuredCurve curve, int? eddyCount = null)
    {
        CurveFit? best = null;
        double least = double.PositiveInfinity;
        int[] counts = eddyCount is { } fixedCount ? [fixedCount] : [.. Enumerable.Range(0, MostEddy + 1)];
        foreach (int eddies in counts)
        {
            bool better = false;
            foreach (bool loss in (bool[])[false, true])
            {
                PickupParts parts = new(eddies, loss);
                if (2 * curve.Count <= parts.Count || Search(curve, parts) is not { } fit)
                {
                    continue;
                }

                double criterion = Criterion(fit);
                if (best is not null && Beats(criterion, fit, least, best))
                {
                    // The plainer choice was searched loosely: before it loses, it is brought to its own end, also from where the richer
                    // one stands.
                    best = Settle(curve, best, fit);
                    least = Criterion(best);
                }

                if (best is null || Beats(criterion, fit, least, best))
                {
                    (best, least, better) = (fit, criterion, true);
                }
            }

            if (!better && eddies > 0)
            {
                break;
            }
        }

        return best is null ? throw new ArgumentException("Too few points.", nameof(curve)) : Settle(curve, best);
    }

    /// <summary>Whether a richer choice determines its parts and is clearly better, not by rounding.</summary>
    private static bool Beats(double criterion, CurveFit fit, double least, CurveFit best) =>
        criterion < least - 6 && fit.Untold.Count <= best.Untold.Count;

    private static double Criterion(CurveFit fit)
    {
        int m = fit.Fit.ResidualCount;
        return m * Math.Log(fit.Fit.ResidualSum / m + LeastResidual * LeastResidual) + fit.Parts.Count * Math.Log(m);
    }

    /// <summary>The best fit of given parts from several starts; null when none has finite residuals.</summary>
    public static CurveFit? FitParts(MeasuredCurve curve, PickupParts parts) =>
        Search(curve, parts) is { } found ? Settle(curve, found) : null;

    /// <summary>The same parts, to the last digits that the data carry.</summary>
    /// <param name="curve">What was measured.</param>
    /// <param name="found">A fit that was searched loosely.</param>
    /// <param name="richer">A fit with more parts, as a second start: what it has in surplus is left out.</param>
    private static CurveFit Settle(MeasuredCurve curve, CurveFit found, CurveFit? richer = null)
    {
        LeastSquaresProblem problem = Problem(curve, found.Parts);
        LeastSquaresFit From(double[] start) =>
            LevenbergMarquardt.Minimise(problem, 2 * curve.Count, start, mostSteps: 100, tolerance: FineTolerance);
        LeastSquaresFit fine = From(found.Fit.Parameters);
        if (
            richer is not null
            && richer.Parts.Take(richer.Fit.Parameters, found.Parts) is { } start
            && From(start) is { } other
            && other.ResidualSum < fine.ResidualSum
        )
        {
            fine = other;
        }

        return new CurveFit(found.Parts, found.Parts.CreatePickup(fine.Parameters), fine, CurveFit.FindUntold(found.Parts, fine));
    }

    private static CurveFit? Search(MeasuredCurve curve, PickupParts parts)
    {
        LeastSquaresFit? best = null;
        LeastSquaresProblem problem = Problem(curve, parts);
        foreach (double[] start in ImpedanceStart.For(parts, curve))
        {
            LeastSquaresFit fit = LevenbergMarquardt.Minimise(problem, 2 * curve.Count, start, mostSteps: 40, tolerance: LooseTolerance);
            best = best is null || fit.ResidualSum < best.ResidualSum ? fit : best;
            if (Math.Sqrt(best.ResidualSum / (2 * curve.Count)) < LeastResidual)
            {
                break;
            }
        }

        return best is null ? null : new CurveFit(parts, parts.CreatePickup(best.Parameters), best, CurveFit.FindUntold(parts, best));
    }

    private static LeastSquaresProblem Problem(MeasuredCurve curve, PickupParts parts)
    {
        int count = curve.Count;
        double[] omega = [.. curve.FrequenciesHz.Select(hz => 2 * Math.PI * hz)],
            weight = [.. curve.ImpedanceOhm!.Select(z => 1 / z.Magnitude)];
        Complex[] measured = curve.ImpedanceOhm!;
        return (p, residuals, jacobian) =>
        {
            Span<double> values = stackalloc double[parts.Count];
            for (int i = 0; i < values.Length; i++)
            {
                // A factor of e^±80 either way is no pickup; held there, numbers stay finite.
                values[i] = Math.Exp(Math.Clamp(p[i], -80, 80));
            }

            Span<Complex> slopes = stackalloc Complex[jacobian.Length > 0 ? parts.Count : 0];
            for (int k = 0; k < count; k++)
            {
                Complex apart = (parts.Impedance(values, omega[k], slopes) - measured[k]) * weight[k];
                (residuals[k], residuals[count + k]) = (apart.Real, apart.Imaginary);
                for (int i = 0; i < slopes.Length; i++)
                {
                    Complex slope = slopes[i] * weight[k];
                    (jacobian[i * 2 * count + k], jacobian[i * 2 * count + count + k]) = (slope.Real, slope.Imaginary);
                }
            }
        };
    }
}
