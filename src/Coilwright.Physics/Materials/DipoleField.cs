namespace Coilwright.Physics.Materials;

/// <summary>The field of magnets seen from far away.</summary>
public static class DipoleField
{
    private const double VacuumPermeability = 4e-7 * Math.PI;

    /// <summary>Largest field, in any direction, of dipoles close together whose moments sum to at most so much, T.</summary>
    /// <param name="momentAm2">Sum of the moments' sizes, A·m², 0…1,000,000.</param>
    /// <param name="distanceM">Distance from their middle, m, 0.1…100.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <remarks>
    /// B = µ0·m/(2π·r³), derived: a dipole's field is largest on its axis, and moments that all point one way add. Dipoles that face each
    /// other have less.
    /// Holds for a group small against r: a rod of length L centred there has (1 − (L/2r)²)⁻² times as much on its axis, at most.
    /// </remarks>
    public static double LargestT(double momentAm2, double distanceM) =>
        VacuumPermeability * Require.InRange(momentAm2, 0, 1e6) / (2 * Math.PI * Math.Pow(Require.InRange(distanceM, 0.1, 100), 3));
}
