namespace Coilwright.Analysis.Curves;

/// <summary>Upper triangles from Householder's reflections, row by row.</summary>
internal static class Triangle
{
    /// <summary>Reduces a Jacobian to its triangle and turns the residuals along with it.</summary>
    /// <param name="columns">The Jacobian, column after column; overwritten copies are made inside.</param>
    /// <param name="right">The residuals.</param>
    /// <param name="rows">Their number.</param>
    /// <param name="n">Number of columns.</param>
    /// <param name="triangle">Receives R, n × n, row after row.</param>
    /// <param name="rotated">Receives the first n of Qᵀ·residuals.</param>
    public static void Reduce(double[] columns, double[] right, int rows, int n, double[] triangle, double[] rotated)
    {
        double[] work = (double[])columns.Clone(),
            turned = (double[])right.Clone();
        Array.Clear(triangle);
        for (int j = 0; j < n; j++)
        {
            Span<double> column = work.AsSpan(j * rows + j, rows - j);
            double norm = Math.Sqrt(Dot(column, column));
            if (norm > 0)
            {
                norm = column[0] > 0 ? norm : -norm;
                for (int i = 0; i < column.Length; i++)
                {
                    column[i] /= norm;
                }

                column[0] += 1;
                for (int k = j + 1; k < n; k++)
                {
                    Reflect(column, work.AsSpan(k * rows + j, rows - j));
                }

                Reflect(column, turned.AsSpan(j, rows - j));
            }

            triangle[j * n + j] = -norm;
            for (int k = j + 1; k < n; k++)
            {
                triangle[j * n + k] = work[k * rows + j];
            }

            rotated[j] = turned[j];
        }
    }

    /// <summary>Length of R·x.</summary>
    public static double TimesNorm(double[] triangle, double[] x)
    {
        int n = x.Length;
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            double row = 0;
            for (int j = i; j < n; j++)
            {
                row += triangle[i * n + j] * x[j];
            }

            sum += row * row;
        }

        return Math.Sqrt(sum);
    }

    /// <summary>Solves R·x = b; null when a pivot is too small beside its column.</summary>
    public static double[]? Solve(double[] triangle, double[] b)
    {
        int n = b.Length;
        double[] x = (double[])b.Clone();
        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++)
            {
                x[i] -= triangle[i * n + j] * x[j];
            }

            double column = 0;
            for (int k = 0; k <= i; k++)
            {
                column = Math.Max(column, Math.Abs(triangle[k * n + i]));
            }

            if (Math.Abs(triangle[i * n + i]) <= 1e-15 * column || !(column > 0))
            {
                return null;
            }

            x[i] /= triangle[i * n + i];
        }

        return x;
    }

    /// <summary>Solves Rᵀ·x = b; R must be regular.</summary>
    public static double[] SolveTransposed(double[] triangle, double[] b)
    {
        int n = b.Length;
        double[] x = (double[])b.Clone();
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < i; j++)
            {
                x[i] -= triangle[j * n + i] * x[j];
            }

            x[i] /= triangle[i * n + i];
        }

        return x;
    }

    private static void Reflect(ReadOnlySpan<double> mirror, Span<double> column)
    {
        double share = -Dot(mirror, column) / mirror[0];
        for (int i = 0; i < column.Length; i++)
        {
            column[i] += share * mirror[i];
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
