namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Loss of a panel's current: ∫ ∇ψ·∇ψ/(σt) for bilinear ψ, by 2 × 2 Gauss points.</summary>
internal static class PanelResistance
{
    /// <summary>What a hole leaves of the conductance, so that the matrix stays regular.</summary>
    private const double LeastConducting = 1e-3;

    /// <summary>Resistance between the panel's four corners, Ω.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="sheetConductanceS">Conductivity times thickness, S.</param>
    public static double[,] Compute(SheetPanel panel, double sheetConductanceS)
    {
        double[,] own = new double[4, 4];
        GaussRule rule = GaussRule.WithNodes(2);
        double perArea = 0.25 / (sheetConductanceS * Math.Max(LeastConducting, 1 - panel.OpenShare));
        for (int g = 0; g < 4; g++)
        {
            double u = rule.At[g % 2],
                v = rule.At[g / 2];
            Vector3M round = Mix(Space.Minus(panel.P01, panel.P00), Space.Minus(panel.P11, panel.P10), v);
            Vector3M outward = Mix(Space.Minus(panel.P10, panel.P00), Space.Minus(panel.P11, panel.P01), u);
            double uu = Space.Dot(round, round),
                vv = Space.Dot(outward, outward),
                uv = Space.Dot(round, outward);
            double weight = perArea / Math.Sqrt(uu * vv - uv * uv);
            for (int k = 0; k < 16; k++)
            {
                (double alongA, double acrossA) = Slope(k / 4, u, v);
                (double alongB, double acrossB) = Slope(k % 4, u, v);
                own[k / 4, k % 4] += weight * (alongA * alongB * vv - (alongA * acrossB + acrossA * alongB) * uv + acrossA * acrossB * uu);
            }
        }

        return own;
    }

    private static (double U, double V) Slope(int corner, double u, double v)
    {
        double signU = corner % 2 == 0 ? -1 : 1,
            signV = corner < 2 ? -1 : 1;
        return (signU * (corner < 2 ? 1 - v : v), signV * (corner % 2 == 0 ? 1 - u : u));
    }

    private static Vector3M Mix(Vector3M a, Vector3M b, double share) => Space.Plus(Space.Times(a, 1 - share), Space.Times(b, share));
}
