namespace Coilwright.Analysis.Curves;

/// <summary>
/// The step of a trust region: the least-squares step if it is short enough, else the damped one whose scaled length is the reach, to a
/// tenth of it.
/// </summary>
internal static class DampedStep
{
    public static double[] Find(double[] triangle, double[] rotated, double[] scale, double reach, ref double damping)
    {
        int n = rotated.Length;
        double low = 0;
        double[]? plain = Triangle.Solve(triangle, rotated);
        if (plain is not null && Array.TrueForAll(plain, double.IsFinite))
        {
            double length = Length(plain, scale),
                over = length - reach;
            if (over <= 0.1 * reach)
            {
                damping = 0;
                return plain;
            }

            double slope = Slope(triangle, plain, scale, length);
            low = over / (reach * slope * slope);
        }

        double high = Steepest(triangle, rotated, scale) / reach;
        high = high > 0 ? high : double.Epsilon / Math.Min(reach, 0.1);
        damping = Math.Clamp(damping, low, Math.Max(low, high));
        double[] step = plain ?? new double[n],
            augmented = new double[n * n];
        double lastOver = double.PositiveInfinity;
        for (int round = 0; round < 10; round++)
        {
            damping = damping > 0 ? damping : Math.Max(1e-300, 0.001 * high);
            step = Solve(triangle, rotated, scale, damping, augmented);
            double length = Length(step, scale),
                over = length - reach;
            if (Math.Abs(over) <= 0.1 * reach || (low <= 0 && over <= lastOver && lastOver < 0))
            {
                break;
            }

            double slope = Slope(augmented, step, scale, length),
                change = over / (reach * slope * slope);
            (low, high) = over > 0 ? (Math.Max(low, damping), high) : (low, Math.Min(high, damping));
            damping = Math.Max(low, damping + change);
            lastOver = over;
        }

        return step;
    }

    /// <summary>Least squares of [R; √λ·D]·x = [b; 0].</summary>
    private static double[] Solve(double[] triangle, double[] rotated, double[] scale, double damping, double[] augmented)
    {
        int n = rotated.Length,
            rows = 2 * n;
        double[] columns = new double[rows * n],
            right = new double[rows],
            turned = new double[n];
        double root = Math.Sqrt(damping);
        for (int j = 0; j < n; j++)
        {
            for (int i = 0; i <= j; i++)
            {
                columns[j * rows + i] = triangle[i * n + j];
            }

            columns[j * rows + n + j] = root * scale[j];
            right[j] = rotated[j];
        }

        Triangle.Reduce(columns, right, rows, n, augmented, turned);
        return Triangle.Solve(augmented, turned) ?? new double[n];
    }

    /// <summary>Length of R⁻ᵀ·D²·x over the length of D·x.</summary>
    private static double Slope(double[] triangle, double[] step, double[] scale, double length)
    {
        double[] scaled = [.. step.Select((value, i) => scale[i] * scale[i] * value / length)];
        double[] solved = Triangle.SolveTransposed(triangle, scaled);
        return Math.Sqrt(solved.Sum(value => value * value));
    }

    private static double Steepest(double[] triangle, double[] rotated, double[] scale)
    {
        int n = rotated.Length;
        double sum = 0;
        for (int j = 0; j < n; j++)
        {
            double dot = 0;
            for (int i = 0; i <= j; i++)
            {
                dot += triangle[i * n + j] * rotated[i];
            }

            sum += dot / scale[j] * (dot / scale[j]);
        }

        return Math.Sqrt(sum);
    }

    private static double Length(double[] step, double[] scale)
    {
        double sum = 0;
        for (int i = 0; i < step.Length; i++)
        {
            sum += step[i] * scale[i] * step[i] * scale[i];
        }

        return Math.Sqrt(sum);
    }
}
