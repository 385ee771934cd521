namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// How much of an even field along its axis a round rod's own poles take away, by the same surface charge that the engines use
/// [SurfaceCharge].
/// </summary>
public static class RodDemagnetisation
{
    /// <summary>Magnetometric factor (mean over the volume) and fluxmetric factor (mean over the middle section).</summary>
    /// <param name="lengthM">Length, m, above zero.</param>
    /// <param name="diameterM">Diameter, m, above zero.</param>
    /// <param name="relativePermeability">Relative permeability, 1.000001…1,000,000,000.</param>
    /// <returns>Both as shares of the magnetisation, 0…1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The permeability lies outside its range.</exception>
    public static (double Magnetometric, double Fluxmetric) Factors(double lengthM, double diameterM, double relativePermeability)
    {
        Require.InRange(relativePermeability, 1 + 1e-6, 1e9);
        RingMesh mesh = RingMesh.Rod(diameterM / 2, lengthM, FieldSettings.Accurate.SideRings, FieldSettings.Accurate.CapRings);
        int n = mesh.Count;
        double susceptibility = relativePermeability - 1,
            moment = 0,
            upper = 0;
        double[] matrix = new double[n * n],
            charge = (double[])mesh.NormalZ.Clone();
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                matrix[i * n + j] = -mesh.Self[i, j] + (i == j ? (relativePermeability + 1) / (2 * susceptibility) : 0);
            }
        }

        new DenseLu(matrix, n).Solve(charge);
        for (int i = 0; i < n; i++)
        {
            moment += charge[i] * mesh.Area[i] * mesh.Z[i];
            upper += mesh.Z[i] > lengthM / 2 ? charge[i] * mesh.Area[i] : 0;
        }

        double section = Math.PI / 4 * diameterM * diameterM;
        return (section * lengthM / moment - 1 / susceptibility, section / upper - 1 / susceptibility);
    }
}
