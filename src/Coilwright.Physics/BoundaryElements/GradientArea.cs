using Coilwright.Physics.BoundaryElements.Metalwork;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// What a hum field that changes evenly from place to place links with each coil, per unit of that change, turns included, signed by the
/// winding signs.
/// </summary>
/// <param name="M3">By coil and axis (x, y, z): linkage per dBz/dx, dBz/dy, dBz/dz, Wb per T/m = m³.</param>
/// <param name="ByBuildM2">Its change with the coil's build, m³/m.</param>
/// <param name="SpreadM3">Its change with the cores at the upper end of their interval, m³.</param>
/// <remarks>
/// The field is zero in the recipe's origin and free of curl and divergence: (G·z, 0, G·x), (0, G·z, G·y) and, the same in all directions
/// across, (−G·x/2, −G·y/2, G·z).
/// It is slow (the cores follow without loss) and far (the pickup does not act back on its source); covers and plates are left out, whose
/// currents at 50 or 60 Hz are about a hundredth and a quarter period late (estimate).
/// Coils count as area × place, exactly; cores by reciprocity: Σ charge per ampere × the field's potential. A uniform field along z links
/// the effective area besides.
/// </remarks>
public sealed record GradientArea(double[,] M3, double[,] ByBuildM2, double[,] SpreadM3)
{
    /// <summary>Below this share of area × size a moment is rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>From a solution's charges.</summary>
    /// <param name="coils">The coils.</param>
    /// <param name="system">The cores.</param>
    /// <param name="charges">Charges per ampere and turn of each coil.</param>
    /// <param name="moves">Of each coil: half of what each material's permeability moves its charges by.</param>
    /// <param name="coreError">Stated error of the cores' share, as a fraction (95 %).</param>
    /// <param name="coresByBuild">Of each coil: relative change of its cores' share with its build, 1/m.</param>
    /// <param name="drawn">Share of the whole that magnetic metalwork leaves open.</param>
    internal static GradientArea Compute(
        IReadOnlyList<FieldCoil> coils,
        SurfaceSystem system,
        double[][] charges,
        List<double[]>[] moves,
        double coreError,
        double[] coresByBuild,
        double drawn
    )
    {
        int n = coils.Count;
        double[][] potential = system.GradientPotentials();
        double[,] moments = new double[n, 3],
            byBuild = new double[n, 3],
            spread = new double[n, 3];
        for (int c = 0; c < n; c++)
        {
            FieldCoil coil = coils[c];
            double turns = coil.Sign * coil.Turns,
                area = turns * AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM),
                areaByBuild = HumArea.BareByBuild(coil);
            double[] place = [coil.Position.XM, coil.Position.YM, coil.Position.ZM];
            for (int axis = 0; axis < 3; axis++)
            {
                double cores = turns * Rows.Dot(charges[c], potential[axis]),
                    sum = area * place[axis] + cores;
                bool real = Math.Abs(sum) > Rounding * Math.Abs(area) * coil.Bobbin.CoreLengthM;
                moments[c, axis] = real ? sum : 0;
                byBuild[c, axis] = real ? areaByBuild * place[axis] + cores * coresByBuild[c] : 0;
                spread[c, axis] = real
                    ? MagneticSheets.Widen(
                        Spread(moves[c].Select(move => turns * Rows.Dot(move, potential[axis])), cores * coreError),
                        sum,
                        drawn
                    )
                    : 0;
            }
        }

        return new GradientArea(moments, byBuild, spread);
    }

    /// <summary>Root of the sum of squares, signed by what the permeabilities do together.</summary>
    private static double Spread(IEnumerable<double> halves, double error)
    {
        double squares = error * error,
            together = 0;
        foreach (double half in halves)
        {
            (squares, together) = (squares + half * half, together + half);
        }

        return Math.CopySign(Math.Sqrt(squares), together);
    }
}
