using System.Numerics;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>Turns complex gains and impedances into points of a response, several at a time.</summary>
internal static class PolarPoints
{
    private const double DbPerNeperOfPower = 4.342944819032518;

    public static void Write(Span<ResponsePoint> points, ReadOnlySpan<double> frequenciesHz, ReadOnlySpan<double> re, ReadOnlySpan<double> im, ReadOnlySpan<double> ohmRe, ReadOnlySpan<double> ohmIm, double reference)
    {
        int width = Vector<double>.Count, at = 0;
        Vector<double> offset = new(2 * Math.Log(reference));
        Span<double> db = stackalloc double[width], degrees = stackalloc double[width], ohm = stackalloc double[width];
        for (; at + width <= points.Length; at += width)
        {
            Vector<double> r = new(re[at..]), i = new(im[at..]), zr = new(ohmRe[at..]), zi = new(ohmIm[at..]);
            ((Vector.Log(Vector.Max(r * r + i * i, new Vector<double>(1e-300))) - offset) * DbPerNeperOfPower).CopyTo(db);
            Degrees(r, i).CopyTo(degrees);
            Vector.SquareRoot(zr * zr + zi * zi).CopyTo(ohm);
            for (int lane = 0; lane < width; lane++)
            {
                points[at + lane] = new ResponsePoint(frequenciesHz[at + lane], db[lane], degrees[lane], ohm[lane]);
            }
        }

        for (; at < points.Length; at++)
        {
            double square = Math.Max(re[at] * re[at] + im[at] * im[at], 1e-300), degree = Math.Atan2(im[at], re[at]) * (180 / Math.PI);
            points[at] = new ResponsePoint(frequenciesHz[at], DbPerNeperOfPower * (Math.Log(square) - 2 * Math.Log(reference)), degree > 90 ? degree - 360 : degree, Math.Sqrt(ohmRe[at] * ohmRe[at] + ohmIm[at] * ohmIm[at]));
        }
    }

    /// <summary>Phase in degrees, −270…90: a passive ladder's phase then runs without a jump.</summary>
    internal static Vector<double> Degrees(Vector<double> re, Vector<double> im)
    {
        Vector<double> x = Vector.Abs(re), y = Vector.Abs(im);
        Vector<double> low = Vector.Min(x, y), high = Vector.Max(x, y), half = new(Math.PI / 2), quarter = new(Math.PI / 4), one = Vector<double>.One;
        Vector<double> t = low / Vector.Max(high, new Vector<double>(1e-300));

        // Above 0.66 the angle is counted from 45°.
        Vector<long> steep = Vector.GreaterThan(t, new Vector<double>(0.66));
        Vector<double> small = Vector.ConditionalSelect(steep, (t - one) / (t + one), t);
        Vector<double> angle = ArcTangent(small) + Vector.ConditionalSelect(steep, quarter, Vector<double>.Zero);
        angle = Vector.ConditionalSelect(Vector.GreaterThan(y, x), half - angle, angle);
        angle = Vector.ConditionalSelect(Vector.LessThan(re, Vector<double>.Zero), new Vector<double>(Math.PI) - angle, angle);
        angle = Vector.ConditionalSelect(Vector.LessThan(im, Vector<double>.Zero), -angle, angle);
        angle = Vector.ConditionalSelect(Vector.GreaterThan(angle, half), angle - new Vector<double>(2 * Math.PI), angle);
        return angle * (180 / Math.PI);
    }

    /// <summary>Inverse tangent of −0.21…0.66: a quotient of two polynomials as in the Cephes library (coefficients from memory; checked against Math.Atan2).</summary>
    private static Vector<double> ArcTangent(Vector<double> x)
    {
        Vector<double> z = x * x;
        Vector<double> p = ((((z * -8.750608600031904122785e-1) - new Vector<double>(1.615753718733365076637e1)) * z - new Vector<double>(7.500855792314704667340e1)) * z
            - new Vector<double>(1.228866684490136173410e2)) * z - new Vector<double>(6.485021904942025371773e1);
        Vector<double> q = ((((z + new Vector<double>(2.485846490142306297962e1)) * z + new Vector<double>(1.650270098316988542046e2)) * z + new Vector<double>(4.328810604912902668951e2)) * z
            + new Vector<double>(4.853903996359136964868e2)) * z + new Vector<double>(1.945506571482613964425e2);
        return x + x * z * p / q;
    }
}
