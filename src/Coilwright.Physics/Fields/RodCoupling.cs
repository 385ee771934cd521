namespace Coilwright.Physics.Fields;

/// <summary>A winding's field on the rings of a rod.</summary>
internal static class RodCoupling
{
    private static readonly GaussRule AxisRule = GaussRule.Of(2);

    /// <summary>Mean normal field of each ring, freed of its mean over the body, and the mean potential.</summary>
    /// <remarks>
    /// The potential goes up the axis by integration of H_z, then out to the ring: around the axis the mean radial field is αρ + βρ³ with
    /// α = −½ dH_z/dz on the axis, and β follows from the mean radial field at the ring itself.
    /// </remarks>
    public static void Couple(CoilField coil, RingBody rod, int around, int place, double[] drive, double[] potential)
    {
        RingMesh mesh = rod.Mesh;
        int[] order = [.. Enumerable.Range(0, mesh.Count).OrderBy(i => mesh.Z[i])];
        bool halved = coil.IsMirroredAbout(rod.Y);
        double level = double.NaN, onAxis = 0, alpha = 0, flux = 0, area = 0;
        foreach (int i in order)
        {
            double z = rod.Bottom + mesh.Z[i], rho = mesh.Rho[i];
            if (!(Math.Abs(z - level) < 1e-12))
            {
                onAxis -= double.IsNaN(level) ? 0 : AlongAxis(coil, rod, level, z);
                alpha = -Slope(coil, rod, z, 0.02 * rho) / 2;
                level = z;
            }

            (double radial, double axial) = Mean(coil, rod, rho, z, around, halved);
            drive[place + i] = mesh.NormalRho[i] * radial + mesh.NormalZ[i] * axial;
            potential[place + i] = onAxis - rho / 4 * (radial + alpha * rho);
            flux += mesh.Area[i] * drive[place + i];
            area += mesh.Area[i];
        }

        for (int i = 0; i < mesh.Count; i++)
        {
            drive[place + i] -= flux / area;
        }
    }

    private static double AlongAxis(CoilField coil, RingBody rod, double from, double to)
    {
        double sum = 0;
        for (int g = 0; g < AxisRule.At.Length; g++)
        {
            sum += AxisRule.Weight[g] * coil.At(rod.X, rod.Y, from + AxisRule.At[g] * (to - from)).ZM;
        }

        return sum * (to - from);
    }

    private static double Slope(CoilField coil, RingBody rod, double z, double step) =>
        (coil.At(rod.X, rod.Y, z + step).ZM - coil.At(rod.X, rod.Y, z - step).ZM) / (2 * step);

    /// <summary>Mean radial and axial field around a circle; with the winding's long axis through the rod, half the circle tells all.</summary>
    private static (double Radial, double Axial) Mean(CoilField coil, RingBody rod, double rho, double z, int around, bool halved)
    {
        int samples = halved ? around / 2 : around;
        double turn = (halved ? Math.PI : 2 * Math.PI) / samples, radial = 0, axial = 0;
        for (int s = 0; s < samples; s++)
        {
            double co = Math.Cos((s + 0.5) * turn), si = Math.Sin((s + 0.5) * turn);
            Vector3M h = coil.At(rod.X + rho * co, rod.Y + rho * si, z);
            radial += h.XM * co + h.YM * si;
            axial += h.ZM;
        }

        return (radial / samples, axial / samples);
    }
}
