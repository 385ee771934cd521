using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Fields;

/// <summary>Inductance of wound coils without iron, by Neumann's integral over the real section.</summary>
/// <remarks>
/// The fourfold integral over two points of a section is reduced to mean offset, offset difference D and axial distance u with the weights
/// 2(b − D)/b² and 2(h − u)/h²; the nodes in D and u are those of Gauss in t with D = b·t⁴, which takes the logarithm at D = u = 0 away.
/// </remarks>
public static class AirInductance
{
    private static readonly double[] At6 = [0.0337652428984240, 0.1693953067668678, 0.3806904069584016, 0.6193095930415985, 0.8306046932331322, 0.9662347571015760];
    private static readonly double[] Weight6 = [0.0856622461895852, 0.1803807865240693, 0.2339569672863455, 0.2339569672863455, 0.1803807865240693, 0.0856622461895852];
    private static readonly double[] At2 = [0.2113248654051871, 0.7886751345948129];

    /// <summary>Self-inductance of one turn squared, H: multiply by N².</summary>
    /// <param name="bobbin">Former and winding height.</param>
    /// <param name="buildM">Radial thickness of the winding, m, above 0.</param>
    public static double SelfPerTurnSquaredH(Bobbin bobbin, double buildM)
    {
        Require.InRange(buildM, 1e-9, 1);
        double heightM = bobbin.WindingHeightM, sum = 0;
        for (int i = 0; i < At6.Length; i++)
        {
            double t = At6[i], difference = buildM * Math.Pow(t, 4);
            double weightD = Weight6[i] * 4 * t * t * t * 2 * (1 - difference / buildM);
            foreach (double place in At2)
            {
                double mean = difference / 2 + place * (buildM - difference);
                TurnContour inner = new(bobbin, mean - difference / 2), outer = new(bobbin, mean + difference / 2);
                for (int k = 0; k < At6.Length; k++)
                {
                    double s = At6[k], distance = heightM * Math.Pow(s, 4);
                    double weightU = Weight6[k] * 4 * s * s * s * 2 * (1 - distance / heightM);
                    sum += 0.5 * weightD * weightU * inner.MutualH(outer, 0, 0, distance);
                }
            }
        }

        return sum;
    }

    /// <summary>Mutual inductance of two coils per turn of each, H, both wound the same way; the windings must not touch.</summary>
    public static double MutualPerTurnsH(FieldCoil one, FieldCoil other)
    {
        double sum = 0;
        double[] at3 = [0.1127016653792583, 0.5, 0.8872983346207417], weight3 = [5.0 / 18, 8.0 / 18, 5.0 / 18];
        double sx = other.Position.XM - one.Position.XM, sy = other.Position.YM - one.Position.YM, sz = other.Position.ZM - one.Position.ZM;
        foreach (double p in At2)
        {
            TurnContour mine = new(one.Bobbin, p * one.BuildM);
            foreach (double q in At2)
            {
                TurnContour theirs = new(other.Bobbin, q * other.BuildM);
                for (int i = 0; i < 3; i++)
                {
                    for (int j = 0; j < 3; j++)
                    {
                        double z = sz + (at3[j] - 0.5) * other.Bobbin.WindingHeightM - (at3[i] - 0.5) * one.Bobbin.WindingHeightM;
                        sum += 0.25 * weight3[i] * weight3[j] * mine.MutualH(theirs, sx, sy, z);
                    }
                }
            }
        }

        return sum;
    }

    /// <summary>Mean area of the turns, m²: exact for a uniform winding.</summary>
    public static double MeanAreaM2(Bobbin bobbin, double buildM)
    {
        // The area is a quadratic of the distance: two Gauss points are exact.
        return At2.Average(place => bobbin.TurnAreaM2(place * buildM));
    }
}
