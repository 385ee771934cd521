using System.Numerics;
using System.Runtime.InteropServices;

namespace Coilwright.Physics.Fields;

/// <summary>The two row operations that dense solves spend their time in, several numbers at once.</summary>
internal static class Rows
{
    public static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        ReadOnlySpan<Vector<double>> wideX = MemoryMarshal.Cast<double, Vector<double>>(x), wideY = MemoryMarshal.Cast<double, Vector<double>>(y);
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
}
