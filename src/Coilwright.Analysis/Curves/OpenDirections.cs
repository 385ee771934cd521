namespace Coilwright.Analysis.Curves;

/// <summary>Singular directions of a triangle: how well the data determine each.</summary>
internal static class OpenDirections
{
    /// <summary>Directions with the standard deviation along each, the worst determined last.</summary>
    /// <param name="triangle">R of the Jacobian at the minimum.</param>
    /// <param name="n">Parameters.</param>
    /// <param name="rows">Residuals.</param>
    /// <param name="spread">Standard deviation of one residual.</param>
    public static IReadOnlyList<FitDirection> Find(double[] triangle, int n, int rows, double spread)
    {
        // Columns of unit length first, so that units do not decide what counts as small.
        double[] size =
        [
            .. Enumerable
                .Range(0, n)
                .Select(j => Math.Sqrt(Enumerable.Range(0, j + 1).Sum(i => triangle[i * n + j] * triangle[i * n + j]))),
        ];
        double[,] u = new double[n, n],
            v = new double[n, n];
        for (int j = 0; j < n; j++)
        {
            v[j, j] = 1;
            for (int i = 0; i <= j; i++)
            {
                u[i, j] = size[j] > 0 ? triangle[i * n + j] / size[j] : 0;
            }
        }

        Rotate(u, v, n);
        double[] singular = [.. Enumerable.Range(0, n).Select(j => Math.Sqrt(Enumerable.Range(0, n).Sum(i => u[i, j] * u[i, j])))];
        double least = singular.Max() * Math.Max(rows, n) * 2.2e-16;
        return
        [
            .. Enumerable
                .Range(0, n)
                .OrderByDescending(j => singular[j])
                .Select(j => new FitDirection(
                    [.. Enumerable.Range(0, n).Select(i => v[i, j] / (size[i] > 0 ? size[i] : 1))],
                    singular[j] > least ? spread / singular[j] : double.PositiveInfinity
                )),
        ];
    }

    /// <summary>One-sided Jacobi rotations until all columns of u are at right angles; v keeps the rotations.</summary>
    private static void Rotate(double[,] u, double[,] v, int n)
    {
        for (int sweep = 0; sweep < 60; sweep++)
        {
            double worst = 0;
            for (int p = 0; p < n - 1; p++)
            {
                for (int q = p + 1; q < n; q++)
                {
                    double a = 0,
                        b = 0,
                        c = 0;
                    for (int i = 0; i < n; i++)
                    {
                        a += u[i, p] * u[i, p];
                        b += u[i, q] * u[i, q];
                        c += u[i, p] * u[i, q];
                    }

                    if (Math.Abs(c) <= 1e-16 * Math.Sqrt(a * b))
                    {
                        continue;
                    }

                    worst = Math.Max(worst, Math.Abs(c) / Math.Sqrt(a * b));
                    double zeta = (b - a) / (2 * c),
                        t = (zeta >= 0 ? 1 : -1) / (Math.Abs(zeta) + Math.Sqrt(1 + zeta * zeta)),
                        cos = 1 / Math.Sqrt(1 + t * t),
                        sin = cos * t;
                    Turn(u, p, q, cos, sin, n);
                    Turn(v, p, q, cos, sin, n);
                }
            }

            if (worst < 1e-15)
            {
                return;
            }
        }
    }

    private static void Turn(double[,] matrix, int p, int q, double cos, double sin, int n)
    {
        for (int i = 0; i < n; i++)
        {
            (matrix[i, p], matrix[i, q]) = (cos * matrix[i, p] - sin * matrix[i, q], sin * matrix[i, p] + cos * matrix[i, q]);
        }
    }
}
