namespace Coilwright.Analysis.Curves;

/// <summary>Nonlinear least squares in a trust region.</summary>
/// <remarks>
/// J. J. Moré, The Levenberg–Marquardt algorithm: implementation and theory (1978), as in the public MINPACK library, from memory
/// [Marquardt]: QR of the Jacobian, step length by
/// Newton's method on the damping, scaling by the largest column norms seen. Our own, because the packaged ones give neither directions
/// that the data leave open nor
/// work on caller-owned columns. Checked on NIST's certified nonlinear sets from both of their starts.
/// </remarks>
public static class LevenbergMarquardt
{
    private const double TightTolerance = 1e-14;

    /// <summary>Fits from a start.</summary>
    /// <param name="problem">Residuals and derivatives.</param>
    /// <param name="residualCount">How many residuals, at least as many as parameters.</param>
    /// <param name="start">First parameters.</param>
    /// <param name="mostSteps">Steps after which it gives up.</param>
    /// <param name="firstReach">Length of the first step over the length of the scaled start, as in MINPACK, whose 100 loses one of NIST's
    /// problems.</param>
    /// <param name="tolerance">Relative change of the sum, or of the parameters, below which it is done.</param>
    public static LeastSquaresFit Minimise(
        LeastSquaresProblem problem,
        int residualCount,
        ReadOnlySpan<double> start,
        int mostSteps = 200,
        double firstReach = 1,
        double tolerance = TightTolerance
    )
    {
        int n = start.Length;
        ArgumentOutOfRangeException.ThrowIfLessThan(residualCount, n);
        double[] at = start.ToArray(),
            trial = new double[n],
            residuals = new double[residualCount],
            next = new double[residualCount],
            jacobian = new double[residualCount * n],
            scale = new double[n];
        problem(at, residuals, jacobian);
        double norm = Norm(residuals),
            reach = 0,
            damping = 0;
        bool converged = !double.IsFinite(norm) ? throw new ArgumentException("The start has no finite residuals.", nameof(start)) : false;
        int steps = 0;
        double[] triangle = new double[n * n],
            rotated = new double[n];
        while (!converged && steps < mostSteps)
        {
            Triangle.Reduce(jacobian, residuals, residualCount, n, triangle, rotated);
            Rescale(triangle, n, scale);
            if (steps == 0)
            {
                double length = Scaled(at, scale);
                reach = firstReach * (length > 0 ? length : 1);
            }

            if (Slope(triangle, rotated, n, norm) <= tolerance)
            {
                converged = true;
                break;
            }

            for (bool accepted = false; !accepted && !converged && steps < mostSteps; )
            {
                steps++;
                double[] step = DampedStep.Find(triangle, rotated, scale, reach, ref damping);
                for (int i = 0; i < n; i++)
                {
                    trial[i] = at[i] - step[i];
                }

                double stepLength = Scaled(step, scale);
                reach = steps == 1 ? Math.Min(reach, stepLength) : reach;
                problem(trial, next, []);
                double nextNorm = Norm(next);
                double actual = 0.1 * nextNorm < norm ? 1 - nextNorm / norm * (nextNorm / norm) : -1;
                double linear = Math.Pow(Triangle.TimesNorm(triangle, step) / norm, 2),
                    damped = damping * Math.Pow(stepLength / norm, 2);
                double predicted = linear + 2 * damped,
                    ratio = predicted > 0 ? actual / predicted : 0;
                AdjustReach(ratio, actual, linear + damped, stepLength, ref reach, ref damping);
                double length = Scaled(trial, scale);
                if (ratio >= 1e-4)
                {
                    (accepted, norm) = (true, nextNorm);
                    trial.CopyTo(at, 0);
                    problem(at, residuals, jacobian);
                }

                converged =
                    (Math.Abs(actual) <= tolerance && predicted <= tolerance && ratio <= 2)
                    || reach <= tolerance * length
                    || norm <= double.Epsilon
                    || (Math.Abs(actual) <= 1e-16 && predicted <= 1e-16);
            }
        }

        Triangle.Reduce(jacobian, residuals, residualCount, n, triangle, rotated);
        double spread = norm / Math.Sqrt(Math.Max(1, residualCount - n));
        return new LeastSquaresFit(
            at,
            norm * norm,
            residualCount,
            steps,
            converged,
            OpenDirections.Find(triangle, n, residualCount, spread)
        );
    }

    private static void AdjustReach(double ratio, double actual, double gain, double stepLength, ref double reach, ref double damping)
    {
        if (ratio <= 0.25)
        {
            double shrink = actual >= 0 ? 0.5 : -0.5 * gain / (-gain + 0.5 * actual);
            shrink = double.IsFinite(shrink) && shrink is >= 0.1 and <= 1 ? shrink : 0.1;
            reach = shrink * Math.Min(reach, stepLength / 0.1);
            damping /= shrink;
        }
        else if (damping <= 0 || ratio >= 0.75)
        {
            reach = stepLength / 0.5;
            damping *= 0.5;
        }
    }

    private static void Rescale(double[] triangle, int n, double[] scale)
    {
        for (int j = 0; j < n; j++)
        {
            double sum = 0;
            for (int i = 0; i <= j; i++)
            {
                sum += triangle[i * n + j] * triangle[i * n + j];
            }

            if (sum > 0)
            {
                scale[j] = Math.Max(scale[j], Math.Sqrt(sum));
            }
            else if (!(scale[j] > 0))
            {
                scale[j] = 1; // a column that moves nothing, so far
            }
        }
    }

    /// <summary>Largest cosine between the residuals and a column: 0 at a minimum.</summary>
    private static double Slope(double[] triangle, double[] rotated, int n, double norm)
    {
        double largest = 0;
        for (int j = 0; j < n; j++)
        {
            double dot = 0,
                sum = 0;
            for (int i = 0; i <= j; i++)
            {
                dot += triangle[i * n + j] * rotated[i];
                sum += triangle[i * n + j] * triangle[i * n + j];
            }

            largest = sum > 0 && norm > 0 ? Math.Max(largest, Math.Abs(dot) / (Math.Sqrt(sum) * norm)) : largest;
        }

        return largest;
    }

    private static double Norm(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values)
        {
            sum += value * value;
        }

        return double.IsFinite(sum) ? Math.Sqrt(sum) : double.PositiveInfinity;
    }

    private static double Scaled(double[] values, double[] scale)
    {
        double sum = 0;
        for (int i = 0; i < values.Length; i++)
        {
            sum += values[i] * scale[i] * values[i] * scale[i];
        }

        return Math.Sqrt(sum);
    }
}
