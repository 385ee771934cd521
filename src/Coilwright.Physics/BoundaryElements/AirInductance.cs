using Coilwright.Physics.Winding;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>How finely an integral over the winding is taken.</summary>
public enum Resolution
{
    /// <summary>While a value is being moved.</summary>
    Fast,

    /// <summary>For what is kept and printed.</summary>
    Accurate,
}

/// <summary>Inductance of wound coils without iron, by Neumann's integral over the real section [Neumann].</summary>
/// <remarks>
/// The fourfold integral over two points of a section is reduced to mean offset, offset difference D and axial distance u with the weights
/// 2(b − D)/b² and 2(h − u)/h²; the nodes in D and u are those of Gauss in t with D = b·t⁴, which takes the logarithm at D = u = 0 away.
/// Error of the fast rule at most 0.1 % on racetracks and round coils, of the accurate one below 0.005 %.
/// </remarks>
public static class AirInductance
{
    private const double Mu0Over4Pi = 1e-7;

    /// <summary>Height over outer width above which the fast rule hands over to the accurate one: long thin solenoids.</summary>
    private const double LimitOfFastRule = 1.5;

    /// <summary>Self-inductance of one turn squared, H: multiply by N².</summary>
    /// <param name="bobbin">Former and winding height, each above zero.</param>
    /// <param name="buildM">Radial thickness of the winding, m, 1 nm…1 m.</param>
    /// <param name="resolution">How finely to integrate.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double SelfPerTurnSquaredH(Bobbin bobbin, double buildM, Resolution resolution = Resolution.Accurate)
    {
        Require.InRange(buildM, 1e-9, 1);
        bool tall = bobbin.WindingHeightM > LimitOfFastRule * (bobbin.CoreWidthM + 2 * buildM);
        (int means, int steps, int angles) = resolution == Resolution.Fast && !tall ? (2, 6, 12) : (4, 10, 24);
        GaussRule mean = GaussRule.WithNodes(means),
            step = GaussRule.WithNodes(steps);
        ArcNodes nodes = ArcNodes.WithNodes(angles);
        Former former = Former.FromBobbin(bobbin);
        double heightM = bobbin.WindingHeightM,
            sum = 0;
        for (int i = 0; i < steps; i++)
        {
            (double difference, double weightD) = Graded(step, i, buildM);
            for (int k = 0; k < steps; k++)
            {
                (double distance, double weightU) = Graded(step, k, heightM);
                for (int p = 0; p < means; p++)
                {
                    double inner = bobbin.EndRadiusM + mean.At[p] * (buildM - difference);
                    sum +=
                        mean.Weight[p]
                        * weightD
                        * weightU
                        * CoaxialLoops.Integral(former.HalfLongM, former.HalfShortM, inner, inner + difference, distance, nodes);
                }
            }
        }

        return Mu0Over4Pi * sum;
    }

    /// <summary>Mutual inductance of two coils per turn of each, H, both wound the same way; the windings must not overlap.</summary>
    /// <param name="one">One coil; its turns, sign and poles do not count.</param>
    /// <param name="other">The other.</param>
    /// <param name="resolution">How finely to integrate.</param>
    public static double MutualPerTurnsH(FieldCoil one, FieldCoil other, Resolution resolution = Resolution.Accurate)
    {
        (int layers, int levels, int angles) = resolution == Resolution.Fast ? (2, 3, 6) : (4, 5, 16);
        double sx = other.Position.XM - one.Position.XM,
            sy = other.Position.YM - one.Position.YM,
            sz = other.Position.ZM - one.Position.ZM;
        GaussRule layer = GaussRule.WithNodes(layers),
            level = GaussRule.WithNodes(levels);
        LoopFilament[] mine = Turns(one, layer, angles),
            theirs = Turns(other, layer, angles);
        double sum = 0;
        for (int i = 0; i < levels; i++)
        {
            for (int j = 0; j < levels; j++)
            {
                double z = sz + (level.At[j] - 0.5) * other.Bobbin.WindingHeightM - (level.At[i] - 0.5) * one.Bobbin.WindingHeightM;
                for (int p = 0; p < layers; p++)
                {
                    for (int q = 0; q < layers; q++)
                    {
                        double weight = level.Weight[i] * level.Weight[j] * layer.Weight[p] * layer.Weight[q];
                        sum += weight * ApartLoops.Integral(mine[p], theirs[q], sx, sy, z);
                    }
                }
            }
        }

        return Mu0Over4Pi * sum;
    }

    /// <summary>Mean area of the turns, m²: exact for a uniform winding.</summary>
    /// <param name="bobbin">Former.</param>
    /// <param name="buildM">Radial thickness of the winding, m, zero or more.</param>
    public static double MeanAreaM2(Bobbin bobbin, double buildM)
    {
        // The area is a quadratic of the distance: two Gauss points are exact.
        GaussRule two = GaussRule.WithNodes(2);
        return (bobbin.TurnAreaM2(two.At[0] * buildM) + bobbin.TurnAreaM2(two.At[1] * buildM)) / 2;
    }

    private static LoopFilament[] Turns(FieldCoil coil, GaussRule layer, int angles)
    {
        Former former = Former.FromBobbin(coil.Bobbin);
        LoopFilament[] turns = new LoopFilament[layer.At.Length];
        for (int p = 0; p < turns.Length; p++)
        {
            turns[p] = new LoopFilament(former.HalfLongM, former.HalfShortM, former.CornerM + layer.At[p] * coil.BuildM, angles);
        }

        return turns;
    }

    /// <summary>A node of ∫ 2(w − D)/w² dD over 0…w, dense toward 0.</summary>
    private static (double At, double Weight) Graded(GaussRule rule, int index, double width)
    {
        double t = rule.At[index],
            cube = t * t * t,
            power = cube * t;
        return (width * power, rule.Weight[index] * 8 * cube * (1 - power));
    }
}
