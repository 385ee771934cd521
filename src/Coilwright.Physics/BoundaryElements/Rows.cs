using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>The two row operations that dense solves spend their time in, several numbers at once.</summary>
internal static class Rows
{
    public static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        ReadOnlySpan<Vector<double>> wideX = MemoryMarshal.Cast<double, Vector<double>>(x),
            wideY = MemoryMarshal.Cast<double, Vector<double>>(y);
        Vector<double> sums = Vector<double>.Zero;
        for (int i = 0; i < wideX.Length; i++)
        {
            sums += wideX[i] * wideY[i];
        }

        double sum = Vector.Sum(sums);
        for (int i = wideX.Length * Vector<double>.Count; i < x.Length; i++)
        {
            sum += x[i] * y[i];
        }

        return sum;
    }

    /// <summary>x −= factor · y.</summary>
    public static void Subtract(Span<double> x, ReadOnlySpan<double> y, double factor)
    {
        Span<Vector<double>> wideX = MemoryMarshal.Cast<double, Vector<double>>(x);
        ReadOnlySpan<Vector<double>> wideY = MemoryMarshal.Cast<double, Vector<double>>(y);
        Vector<double> times = new(factor);
        for (int i = 0; i < wideX.Length; i++)
        {
            wideX[i] -= times * wideY[i];
        }

        for (int i = wideX.Length * Vector<double>.Count; i < x.Length; i++)
        {
            x[i] -= factor * y[i];
        }
    }

    /// <summary>own −= Σ factor[k] · rows[k], rows of eight.</summary>
    public static void SubtractProduct(Span<double> own, ReadOnlySpan<double> factor, ReadOnlySpan<double> rows)
    {
        ref double from = ref MemoryMarshal.GetReference(rows[..(8 * factor.Length)]);
        Vector256<double> a = default,
            b = default,
            c = default,
            d = default,
            e = default,
            f = default,
            g = default,
            h = default;
        int k = 0;
        for (; k + 4 <= factor.Length; k += 4)
        {
            nuint at = (nuint)(8 * k);
            Vector256<double> first = Vector256.Create(factor[k]),
                second = Vector256.Create(factor[k + 1]),
                third = Vector256.Create(factor[k + 2]),
                fourth = Vector256.Create(factor[k + 3]);
            a = Vector256.FusedMultiplyAdd(first, Vector256.LoadUnsafe(ref from, at), a);
            b = Vector256.FusedMultiplyAdd(first, Vector256.LoadUnsafe(ref from, at + 4), b);
            c = Vector256.FusedMultiplyAdd(second, Vector256.LoadUnsafe(ref from, at + 8), c);
            d = Vector256.FusedMultiplyAdd(second, Vector256.LoadUnsafe(ref from, at + 12), d);
            e = Vector256.FusedMultiplyAdd(third, Vector256.LoadUnsafe(ref from, at + 16), e);
            f = Vector256.FusedMultiplyAdd(third, Vector256.LoadUnsafe(ref from, at + 20), f);
            g = Vector256.FusedMultiplyAdd(fourth, Vector256.LoadUnsafe(ref from, at + 24), g);
            h = Vector256.FusedMultiplyAdd(fourth, Vector256.LoadUnsafe(ref from, at + 28), h);
        }

        for (; k < factor.Length; k++)
        {
            nuint at = (nuint)(8 * k);
            Vector256<double> times = Vector256.Create(factor[k]);
            a = Vector256.FusedMultiplyAdd(times, Vector256.LoadUnsafe(ref from, at), a);
            b = Vector256.FusedMultiplyAdd(times, Vector256.LoadUnsafe(ref from, at + 4), b);
        }

        ref double place = ref MemoryMarshal.GetReference(own[..8]);
        (Vector256.LoadUnsafe(ref place) - (a + c + (e + g))).StoreUnsafe(ref place);
        (Vector256.LoadUnsafe(ref place, 4) - (b + d + (f + h))).StoreUnsafe(ref place, 4);
    }

    public static void Swap(Span<double> x, Span<double> y)
    {
        for (int i = 0; i < x.Length; i++)
        {
            (x[i], y[i]) = (y[i], x[i]);
        }
    }
}
