namespace Coilwright.Physics.Winding;

/// <summary>Self-capacitance of a winding from the energy between neighbouring turns. SI units.</summary>
/// <remarks>
/// With the voltage falling evenly along the wire, turns i and j differ by (i − j)/N of it, so C = Σ C_tt·l·((i − j)/N)² over neighbours
/// [EvenLayer].
/// Capacitance to poles, magnets, cover and ground is not part of this figure: Electrostatics adds it.
/// </remarks>
public static class LayCapacitance
{
    /// <summary>Permittivity of vacuum, F/m (CODATA 2018: 8.854 187 8128e-12).</summary>
    public const double VacuumPermittivity = 8.8541878128e-12;

    private const double HalfFace = Math.PI / 6; // half of the 60° that each of six neighbours takes

    /// <summary>Capacitance per metre of two enamelled wires facing each other over ±30°, F/m.</summary>
    /// <param name="bareM">Diameter of the copper, m, 1 µm…1 mm.</param>
    /// <param name="overallM">Diameter over the enamel, m, 1.0001…2 times <paramref name="bareM"/>.</param>
    /// <param name="enamelPermittivity">Relative permittivity of the coat, 1…20.</param>
    /// <param name="gapPermittivity">Relative permittivity between the coats, 1…20: 1 air, about 2.3 wax.</param>
    /// <param name="gapM">Free distance between the coats, m, 0…1; zero when they touch.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <remarks>
    /// Per radian of facing angle the two coats, ε0·ε/(2·ln(D/d)), stand in series with the gap, ε0·ε_g·(D/2)/(g + D(1 − cos θ)), the field
    /// lines taken straight across. The integral of 1/(a − b·cos θ) is closed. Method of A. Massarini and M. K. Kazimierczuk, IEEE Trans.
    /// Power Electron. 12(4) 671, 1997 (abstract read; form from memory), which takes touching wires; the gap is our addition.
    /// </remarks>
    public static double TurnToTurnFPerM(double bareM, double overallM, double enamelPermittivity, double gapPermittivity, double gapM)
    {
        CheckWire(bareM, overallM, enamelPermittivity, gapPermittivity);
        Require.InRange(gapM, 0, 1);
        double b = 2 / gapPermittivity;
        double excess = 2 * Math.Log(overallM / bareM) / enamelPermittivity + b * gapM / overallM; // a − b
        double root = Math.Sqrt(excess * (excess + 2 * b)); // √(a² − b²)
        double angle = Math.Atan(Math.Sqrt((excess + 2 * b) / excess) * Math.Tan(HalfFace / 2));
        return VacuumPermittivity * 4 * angle / root;
    }

    /// <summary>Self-capacitance of a laid section, F.</summary>
    /// <param name="section">The section.</param>
    /// <param name="bareM">Diameter of the copper, m, 1 µm…1 mm.</param>
    /// <param name="overallM">Diameter over the enamel, m, 1.0001…2 times <paramref name="bareM"/>.</param>
    /// <param name="enamelPermittivity">Relative permittivity of the coat, 1…20.</param>
    /// <param name="gapPermittivity">Relative permittivity between the coats, 1…20: 1 air, about 2.3 wax.</param>
    /// <param name="meanTurnM">Length of the mean turn, m, 0…10.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double SelfCapacitanceF(
        LaidSection section,
        double bareM,
        double overallM,
        double enamelPermittivity,
        double gapPermittivity,
        double meanTurnM
    )
    {
        Require.InRange(meanTurnM, 0, 10);
        double turns = section.Spec.Turns;
        double touching = TurnToTurnFPerM(bareM, overallM, enamelPermittivity, gapPermittivity, 0);
        double sum = 0;
        foreach (NeighbourPair pair in section.Neighbours)
        {
            double share = (pair.Later - pair.Earlier) / turns;
            double perMetre =
                pair.GapM < 1e-6 * overallM ? touching : TurnToTurnFPerM(bareM, overallM, enamelPermittivity, gapPermittivity, pair.GapM);
            sum += perMetre * share * share;
        }

        return sum * meanTurnM;
    }

    /// <summary>
    /// Static capacitance between two full neighbouring layers, F: each turn lies in a valley and touches two turns of the layer below.
    /// </summary>
    /// <param name="bareM">Diameter of the copper, m, 1 µm…1 mm.</param>
    /// <param name="overallM">Diameter over the enamel, m, 1.0001…2 times <paramref name="bareM"/>.</param>
    /// <param name="enamelPermittivity">Relative permittivity of the coat, 1…20.</param>
    /// <param name="gapPermittivity">Relative permittivity between the coats, 1…20: 1 air, about 2.3 wax.</param>
    /// <param name="windingHeightM">Space between the flanges, m.</param>
    /// <param name="meanTurnM">Length of the mean turn, m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double InterlayerF(
        double bareM,
        double overallM,
        double enamelPermittivity,
        double gapPermittivity,
        double windingHeightM,
        double meanTurnM
    ) => 2 * windingHeightM / overallM * meanTurnM * TurnToTurnFPerM(bareM, overallM, enamelPermittivity, gapPermittivity, 0);

    /// <summary>Self-capacitance of neat layers wound back and forth, F: (4/3)·(p − 1)/p²·C_L.</summary>
    /// <param name="layers">Layers p, 1…100,000; need not be whole.</param>
    /// <param name="interlayerF">Static capacitance between two neighbouring layers, F.</param>
    /// <exception cref="ArgumentOutOfRangeException">The layers lie outside their range.</exception>
    /// <remarks>
    /// Energy method for layered windings, as reviewed by J. Biela and J. W. Kolar, 2008 (derivation repeated here; exact for the idealised
    /// winding).
    /// </remarks>
    public static double EvenLayerCapacitanceF(double layers, double interlayerF) =>
        4.0 / 3 * (Require.InRange(layers, 1, 1e5) - 1) / (layers * layers) * interlayerF;

    /// <summary>The same with every layer wound in the same direction, F: three quarters of back and forth.</summary>
    /// <param name="layers">Layers, 1…100,000; need not be whole.</param>
    /// <param name="interlayerF">Static capacitance between two neighbouring layers, F.</param>
    /// <exception cref="ArgumentOutOfRangeException">The layers lie outside their range.</exception>
    public static double SameDirectionLayerCapacitanceF(double layers, double interlayerF) =>
        0.75 * EvenLayerCapacitanceF(layers, interlayerF);

    private static void CheckWire(double bareM, double overallM, double enamelPermittivity, double gapPermittivity)
    {
        Require.InRange(bareM, 1e-6, 1e-3);
        Require.InRange(overallM, bareM * 1.0001, 2 * bareM);
        Require.InRange(enamelPermittivity, 1, 20);
        Require.InRange(gapPermittivity, 1, 20);
    }
}
