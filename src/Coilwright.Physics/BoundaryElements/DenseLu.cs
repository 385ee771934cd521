namespace Coilwright.Physics.BoundaryElements;

/// <summary>LU factors of a real square matrix, rows swapped for the largest pivot. The matrix handed in is overwritten.</summary>
/// <remarks>
/// Factored in blocks of columns: what is right of a block is brought up to date in strips, each by its own task (decision 8).
/// </remarks>
internal sealed class DenseLu
{
    /// <summary>Columns factored at a time.</summary>
    private const int Block = 48;

    /// <summary>Right sides solved at a time.</summary>
    private const int Sides = 8;

    /// <summary>Fewer columns than this are updated by one thread.</summary>
    private const int WorthThreads = 192;

    private readonly double[] _a;
    private readonly int[] _row;
    private readonly int _n;

    /// <param name="matrix">Row-major, n × n.</param>
    /// <param name="n">Order.</param>
    /// <param name="cancel">Looked at before each block.</param>
    public DenseLu(double[] matrix, int n, CancellationToken cancel = default)
    {
        (_a, _n, _row) = (matrix, n, new int[n]);
        for (int from = 0; from < n; from += Block)
        {
            cancel.ThrowIfCancellationRequested();
            int to = Math.Min(n, from + Block),
                strips = (n - to + LuStrip.Width - 1) / LuStrip.Width;
            FactorColumns(from, to);
            if (n - to >= WorthThreads)
            {
                Parallel.For(0, strips, strip => LuStrip.Update(_a, _n, from, to, to + strip * LuStrip.Width));
            }
            else
            {
                for (int strip = 0; strip < strips; strip++)
                {
                    LuStrip.Update(_a, _n, from, to, to + strip * LuStrip.Width);
                }
            }
        }
    }

    /// <summary>Solves for one right side, in place.</summary>
    public void Solve(Span<double> x)
    {
        for (int k = 0; k < _n; k++)
        {
            (x[k], x[_row[k]]) = (x[_row[k]], x[k]);
        }

        for (int i = 1; i < _n; i++)
        {
            x[i] -= Rows.Dot(_a.AsSpan(i * _n, i), x[..i]);
        }

        for (int i = _n - 1; i >= 0; i--)
        {
            double sum = x[i] - Rows.Dot(_a.AsSpan(i * _n + i + 1, _n - i - 1), x[(i + 1).._n]);
            x[i] = sum / _a[i * _n + i];
        }
    }

    /// <summary>Solves for several right sides, in place; the factors are read once for each eight.</summary>
    public void Solve(IReadOnlyList<double[]> many)
    {
        int groups = (many.Count + Sides - 1) / Sides;
        if (groups > 1 && _n >= WorthThreads)
        {
            Parallel.For(0, groups, group => SolveGroup(many, group * Sides));
        }
        else
        {
            for (int group = 0; group < groups; group++)
            {
                SolveGroup(many, group * Sides);
            }
        }
    }

    private void SolveGroup(IReadOnlyList<double[]> many, int first)
    {
        int count = Math.Min(Sides, many.Count - first);
        if (count == 1)
        {
            Solve(many[first]);
            return;
        }

        double[] x = new double[_n * Sides];
        for (int s = 0; s < count; s++)
        {
            double[] side = many[first + s];
            for (int k = 0; k < _n; k++)
            {
                (side[k], side[_row[k]]) = (side[_row[k]], side[k]);
                x[k * Sides + s] = side[k];
            }
        }

        for (int i = 1; i < _n; i++)
        {
            Rows.SubtractProduct(x.AsSpan(i * Sides, Sides), _a.AsSpan(i * _n, i), x);
        }

        for (int i = _n - 1; i >= 0; i--)
        {
            Span<double> own = x.AsSpan(i * Sides, Sides);
            Rows.SubtractProduct(own, _a.AsSpan(i * _n + i + 1, _n - i - 1), x.AsSpan((i + 1) * Sides));
            double inverse = 1 / _a[i * _n + i];
            for (int s = 0; s < Sides; s++)
            {
                own[s] *= inverse;
            }
        }

        for (int s = 0; s < count; s++)
        {
            double[] side = many[first + s];
            for (int k = 0; k < _n; k++)
            {
                side[k] = x[k * Sides + s];
            }
        }
    }

    /// <summary>Factors a block of columns below and on the diagonal; whole rows are swapped.</summary>
    private void FactorColumns(int from, int to)
    {
        for (int k = from; k < to; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < _n; i++)
            {
                pivot = Math.Abs(_a[i * _n + k]) > Math.Abs(_a[pivot * _n + k]) ? i : pivot;
            }

            _row[k] = pivot;
            if (pivot != k)
            {
                Rows.Swap(_a.AsSpan(k * _n, _n), _a.AsSpan(pivot * _n, _n));
            }

            double inverse = 1 / _a[k * _n + k];
            ReadOnlySpan<double> top = _a.AsSpan(k * _n + k + 1, to - k - 1);
            for (int i = k + 1; i < _n; i++)
            {
                double factor = _a[i * _n + k] * inverse;
                _a[i * _n + k] = factor;
                Rows.Subtract(_a.AsSpan(i * _n + k + 1, to - k - 1), top, factor);
            }
        }
    }
}
