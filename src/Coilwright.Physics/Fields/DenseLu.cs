namespace Coilwright.Physics.Fields;

/// <summary>LU factors of a real square matrix, rows swapped for the largest pivot. The matrix handed in is overwritten.</summary>
internal sealed class DenseLu
{
    private readonly double[] _a;
    private readonly int[] _row;
    private readonly int _n;

    /// <param name="matrix">Row-major, n × n.</param>
    /// <param name="n">Order.</param>
    public DenseLu(double[] matrix, int n)
    {
        (_a, _n, _row) = (matrix, n, new int[n]);
        for (int k = 0; k < n; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < n; i++)
            {
                pivot = Math.Abs(_a[i * n + k]) > Math.Abs(_a[pivot * n + k]) ? i : pivot;
            }

            _row[k] = pivot;
            Span<double> top = _a.AsSpan(k * n, n);
            if (pivot != k)
            {
                Span<double> other = _a.AsSpan(pivot * n, n);
                for (int j = 0; j < n; j++)
                {
                    (top[j], other[j]) = (other[j], top[j]);
                }
            }

            Eliminate(k, top);
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

    private void Eliminate(int k, Span<double> top)
    {
        double inverse = 1 / top[k];
        for (int i = k + 1; i < _n; i++)
        {
            double factor = _a[i * _n + k] * inverse;
            _a[i * _n + k] = factor;
            Rows.Subtract(_a.AsSpan(i * _n + k + 1, _n - k - 1), top[(k + 1)..], factor);
        }
    }
}
