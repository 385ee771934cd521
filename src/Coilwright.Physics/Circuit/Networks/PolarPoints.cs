using System.Numerics;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>Turns complex gains and impedances into points of a response, several at a time.</summary>
internal static class PolarPoints
{
    private const double DbPerNeperOfPower = 4.342944819032518;

    public static void Write(
        Span<ResponsePoint> points,
        ReadOnlySpan<double> frequenciesHz,
        ReadOnlySpan<Vector<double>> re,
        ReadOnlySpan<Vector<double>> im,
        ReadOnlySpan<Vector<double>> ohmRe,
        ReadOnlySpan<Vector<double>> ohmIm,
        double reference
    )
    {
        int width = Vector<double>.Count;
        Vector<double> offset = new(2 * Math.Log(reference));
        for (int at = 0, v = 0; at < points.Length; at += width, v++)
        {
            Vector<double> db =
                (Vector.Log(Vector.Max(re[v] * re[v] + im[v] * im[v], new Vector<double>(1e-300))) - offset) * DbPerNeperOfPower;
            Vector<double> degrees = Degrees(re[v], im[v]),
                ohm = Vector.SquareRoot(ohmRe[v] * ohmRe[v] + ohmIm[v] * ohmIm[v]);
            int lanes = Math.Min(width, points.Length - at);
            for (int lane = 0; lane < lanes; lane++)
            {
                points[at + lane] = new ResponsePoint(frequenciesHz[at + lane], db[lane], degrees[lane], ohm[lane]);
            }
        }
    }

    /// <summary>Phase in degrees, −270…90: a passive ladder's phase then runs without a jump.</summary>
    internal static Vector<double> Degrees(Vector<double> re, Vector<double> im)
    {
        Vector<double> x = Vector.Abs(re),
            y = Vector.Abs(im);
        Vector<double> low = Vector.Min(x, y),
            high = Vector.Max(x, y),
            half = new(Math.PI / 2),
            quarter = new(Math.PI / 4),
            one = Vector<double>.One;
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

    /// <summary>
    /// Inverse tangent of −0.21…0.66: a quotient of two polynomials as in the Cephes library [Cephes] (coefficients from memory; checked
    /// against Math.Atan2).
    /// </summary>
    private static Vector<double> ArcTangent(Vector<double> x)
    {
        Vector<double> z = x * x;
        Vector<double> p =
            (
                (
                    ((z * -8.750608600031904122785e-1) - new Vector<double>(1.615753718733365076637e1)) * z
                    - new Vector<double>(7.500855792314704667340e1)
                ) * z
                - new Vector<double>(1.228866684490136173410e2)
            ) * z
            - new Vector<double>(6.485021904942025371773e1);
        Vector<double> q =
            (
                (
                    ((z + new Vector<double>(2.485846490142306297962e1)) * z + new Vector<double>(1.650270098316988542046e2)) * z
                    + new Vector<double>(4.328810604912902668951e2)
                ) * z
                + new Vector<double>(4.853903996359136964868e2)
            ) * z
            + new Vector<double>(1.945506571482613964425e2);
        return x + x * z * p / q;
    }
}
