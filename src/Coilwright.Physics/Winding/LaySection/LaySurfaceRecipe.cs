namespace Coilwright.Physics.Winding;

/// <summary>Remakes the nodes of the surface behind <see cref="LayForecast"/> from turn-by-turn sections.</summary>
/// <remarks>
/// Reference wire and window: 63.5 µm bare, 71.1 µm overall, enamel 3.5, air in the gaps, 11 mm. Each node is the mean of four sections
/// whose
/// pitch stands 0 to 2 % above the node's, because a lay without wander depends on how the passes happen to fit the window.
/// </remarks>
public static class LaySurfaceRecipe
{
    private const double BareM = 63.5e-6;
    private const double OverallM = 71.1e-6;
    private const double HeightM = 11e-3;
    private const double EnamelPermittivity = 3.5;
    private const double TouchingBelow = 1e-6;
    private static readonly double[] PitchSteps = [1, 1.007, 1.013, 1.02];

    /// <summary>Nodes of the pitch, in overall diameters.</summary>
    public static IReadOnlyList<double> PitchNodes { get; } = [0.7, 0.9, 1, 1.05, 1.2, 1.5, 2, 3, 5, 8];

    /// <summary>Nodes of the wander, one standard deviation in overall diameters.</summary>
    public static IReadOnlyList<double> JitterNodes { get; } = [0, 0.1, 0.25, 0.5, 1, 2, 4, 8];

    /// <summary>Nodes of the number of layers N·d/height.</summary>
    public static IReadOnlyList<double> LayerNodes { get; } = [1, 2, 5, 12, 30, 80];

    /// <summary>Gap that stands for all pairs near each other without touching, in overall diameters.</summary>
    public const double NearGap = 0.15;

    /// <summary>Values at one node.</summary>
    /// <param name="pitch">Travel per turn over the overall diameter, above zero.</param>
    /// <param name="jitter">Wander over the overall diameter, one standard deviation, zero or more.</param>
    /// <param name="layers">Number of layers, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of the <see cref="LaySpec"/> that follows lies outside its range.</exception>
    public static LayNode Node(double pitch, double jitter, double layers)
    {
        int turns = (int)Math.Round(layers * HeightM / OverallM);
        double packing = 0;
        double touching = 0;
        double near = 0;
        foreach ((int k, double step) in PitchSteps.Index())
        {
            LaySpec spec = new(OverallM, HeightM, turns, pitch * step * OverallM, jitter * OverallM);
            LaidSection section = LaySimulation.Run(spec, (ulong)(k + 1));
            packing += section.PackingFactor / PitchSteps.Length;
            touching += Part(section, layers, touching: true) / PitchSteps.Length;
            near += Part(section, layers, touching: false) / PitchSteps.Length;
        }

        return new(packing, touching, near);
    }

    private static double Part(LaidSection section, double layers, bool touching)
    {
        LaidSection part = section with { Neighbours = [.. section.Neighbours.Where(p => p.GapM < TouchingBelow * OverallM == touching)] };
        double unit = LayCapacitance.TurnToTurnFPerM(BareM, OverallM, EnamelPermittivity, 1, touching ? 0 : NearGap * OverallM);
        return LayCapacitance.SelfCapacitanceF(part, BareM, OverallM, EnamelPermittivity, 1, 1)
            / (4.0 / 3 * 2 * HeightM / OverallM * unit / layers);
    }
}
