using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Brings a narrow strip of columns up to date after a block of columns has been factored; the strip's top is kept packed in the nearest
/// memory.
/// </summary>
internal static class LuStrip
{
    /// <summary>Columns of a strip: three vectors of four.</summary>
    public const int Width = 12;

    private const int MostRows = 64;

    /// <param name="a">The matrix, row-major n × n.</param>
    /// <param name="n">Order.</param>
    /// <param name="from">First column of the block.</param>
    /// <param name="to">Column after the block.</param>
    /// <param name="column">First column of the strip.</param>
    public static void Update(double[] a, int n, int from, int to, int column)
    {
        int width = Math.Min(Width, n - column),
            depth = to - from;
        Span<double> top = stackalloc double[MostRows * Width];
        for (int k = 0; k < depth; k++)
        {
            Span<double> own = top.Slice(k * Width, Width);
            a.AsSpan((from + k) * n + column, width).CopyTo(own);
            for (int above = 0; above < k; above++)
            {
                Rows.Subtract(own, top.Slice(above * Width, Width), a[(from + k) * n + from + above]);
            }

            own[..width].CopyTo(a.AsSpan((from + k) * n + column, width));
        }

        int row = to;
        for (; width == Width && row + 4 <= n; row += 4)
        {
            Four(a, n, row, from, column, depth, top);
        }

        for (; row < n; row++)
        {
            Span<double> own = a.AsSpan(row * n + column, width);
            for (int k = 0; k < depth; k++)
            {
                Rows.Subtract(own, top.Slice(k * Width, width), a[row * n + from + k]);
            }
        }
    }

    /// <summary>Four rows of the strip, all twelve sums in registers.</summary>
    private static void Four(double[] a, int n, int row, int from, int column, int depth, ReadOnlySpan<double> top)
    {
        ref double t = ref MemoryMarshal.GetReference(top);
        ReadOnlySpan<double> l0 = a.AsSpan(row * n + from, depth),
            l1 = a.AsSpan((row + 1) * n + from, depth);
        ReadOnlySpan<double> l2 = a.AsSpan((row + 2) * n + from, depth),
            l3 = a.AsSpan((row + 3) * n + from, depth);
        Vector256<double> a0 = default,
            a1 = default,
            a2 = default,
            b0 = default,
            b1 = default,
            b2 = default;
        Vector256<double> c0 = default,
            c1 = default,
            c2 = default,
            d0 = default,
            d1 = default,
            d2 = default;
        for (int k = 0; k < l0.Length; k++)
        {
            nuint at = (nuint)(k * Width);
            Vector256<double> t0 = Vector256.LoadUnsafe(ref t, at),
                t1 = Vector256.LoadUnsafe(ref t, at + 4),
                t2 = Vector256.LoadUnsafe(ref t, at + 8);
            Vector256<double> l = Vector256.Create(l0[k]);
            (a0, a1, a2) = (
                Vector256.FusedMultiplyAdd(l, t0, a0),
                Vector256.FusedMultiplyAdd(l, t1, a1),
                Vector256.FusedMultiplyAdd(l, t2, a2)
            );
            l = Vector256.Create(l1[k]);
            (b0, b1, b2) = (
                Vector256.FusedMultiplyAdd(l, t0, b0),
                Vector256.FusedMultiplyAdd(l, t1, b1),
                Vector256.FusedMultiplyAdd(l, t2, b2)
            );
            l = Vector256.Create(l2[k]);
            (c0, c1, c2) = (
                Vector256.FusedMultiplyAdd(l, t0, c0),
                Vector256.FusedMultiplyAdd(l, t1, c1),
                Vector256.FusedMultiplyAdd(l, t2, c2)
            );
            l = Vector256.Create(l3[k]);
            (d0, d1, d2) = (
                Vector256.FusedMultiplyAdd(l, t0, d0),
                Vector256.FusedMultiplyAdd(l, t1, d1),
                Vector256.FusedMultiplyAdd(l, t2, d2)
            );
        }

        Take(ref a[row * n + column], a0, a1, a2);
        Take(ref a[(row + 1) * n + column], b0, b1, b2);
        Take(ref a[(row + 2) * n + column], c0, c1, c2);
        Take(ref a[(row + 3) * n + column], d0, d1, d2);
    }

    private static void Take(ref double place, Vector256<double> first, Vector256<double> second, Vector256<double> third)
    {
        (Vector256.LoadUnsafe(ref place) - first).StoreUnsafe(ref place);
        (Vector256.LoadUnsafe(ref place, 4) - second).StoreUnsafe(ref place, 4);
        (Vector256.LoadUnsafe(ref place, 8) - third).StoreUnsafe(ref place, 8);
    }
}
