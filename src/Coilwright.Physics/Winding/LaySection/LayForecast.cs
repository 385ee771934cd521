namespace Coilwright.Physics.Winding;

/// <summary>What the lay makes of a winding.</summary>
/// <param name="PackingFactor">Part of height × build that is wire with its coat, 0…π/√12.</param>
/// <param name="CapacitanceF">Self-capacitance between turns, F; capacitance to poles, cover and ground comes on top.</param>
public sealed record LayEstimate(Estimate PackingFactor, Estimate CapacitanceF);

/// <summary>Fill and self-capacitance in microseconds, from a surface fitted over turn-by-turn sections.</summary>
/// <remarks>
/// Meant for two layers and more. A neat lay without wander also depends on whether its passes happen to fit the window; the surface gives
/// the
/// middle of that. Capacitance to poles, magnets, cover and ground is not in it: Electrostatics adds that.
/// </remarks>
public static class LayForecast
{
    /// <summary>Pitch of a scattered lay when none is stated, m. Assumption: about 75 turns a pass in an 11 mm window.</summary>
    public const double ScatteredPitchM = 0.15e-3;

    /// <summary>Wander of the guide in a scattered lay when none is stated, one standard deviation, m. Assumption, no source.</summary>
    public const double ScatteredJitterM = 0.1e-3;

    /// <summary>
    /// Pitch of an even lay over the overall diameter when none is stated. Assumption: just enough that turns do not climb.
    /// </summary>
    public const double EvenPitchRatio = 1.01;

    /// <summary>
    /// Factor either way that holds 95 % of real coils until one of the kind was measured: enamel, real wander, tension. Assumption.
    /// </summary>
    public const double CapacitanceFactor95 = 1.5;

    /// <summary>Ends of the turns: a recipe's 1 to 100,000, and room beyond for a count that scatters, most when wound by time.</summary>
    public const double LeastTurns = 0.25,
        MostTurns = 2e5;

    /// <summary>Overall diameters that a window must be high.</summary>
    public const double LeastWires = 3;

    /// <summary>Fill and capacitance.</summary>
    /// <param name="bareM">Diameter of the copper, m, 1 µm…1 mm.</param>
    /// <param name="overallM">Diameter over the enamel, m, 1.0001…2 times <paramref name="bareM"/>.</param>
    /// <param name="enamelPermittivity">Relative permittivity of the coat, 1…20.</param>
    /// <param name="gapPermittivity">Relative permittivity between the coats, 1…20: 1 air, about 2.3 wax.</param>
    /// <param name="windingHeightM">Space between the flanges, m, three overall diameters…1 m.</param>
    /// <param name="meanTurnM">Length of the mean turn, m, above zero.</param>
    /// <param name="turns">Turns, <see cref="LeastTurns"/>…<see cref="MostTurns"/>; need not be whole.</param>
    /// <param name="lay">Kind of lay, which sets pitch and wander where they are not stated.</param>
    /// <param name="pitchM">Traverse travel per turn, m, 1 µm…1 m; null lets the lay choose.</param>
    /// <param name="jitterM">Wander of the guide, one standard deviation, m, 0…1; null lets the lay choose.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static LayEstimate Quick(
        double bareM,
        double overallM,
        double enamelPermittivity,
        double gapPermittivity,
        double windingHeightM,
        double meanTurnM,
        double turns,
        Lay lay,
        double? pitchM,
        double? jitterM
    )
    {
        Require.InRange(turns, LeastTurns, MostTurns);
        Require.InRange(windingHeightM, LeastWires * overallM, 1);
        double pitch = Require.InRange(pitchM ?? DefaultPitchM(lay, overallM), 1e-6, 1) / overallM;
        double jitter = Require.InRange(jitterM ?? DefaultJitterM(lay), 0, 1) / overallM;
        double layers = Math.Max(1, turns * overallM / windingHeightM);
        LayNode node = LaySurface.Interpolate(pitch, jitter, layers);
        double touchingF = LayCapacitance.TurnToTurnFPerM(bareM, overallM, enamelPermittivity, gapPermittivity, 0);
        double nearF = LayCapacitance.TurnToTurnFPerM(
            bareM,
            overallM,
            enamelPermittivity,
            gapPermittivity,
            LaySurfaceRecipe.NearGap * overallM
        );
        double perLayersF = 4.0 / 3 * 2 * windingHeightM / overallM * meanTurnM / layers;
        double capacitanceF = perLayersF * (node.Touching * touchingF + node.Near * nearF);
        double packing = node.Packing;
        return new(
            new(
                packing,
                packing - LaySurface.PackingHalfWidth,
                Math.Min(Math.PI / Math.Sqrt(12), packing + LaySurface.PackingHalfWidth),
                Basis.Forecast
            ),
            new(capacitanceF, capacitanceF / CapacitanceFactor95, capacitanceF * CapacitanceFactor95, Basis.Forecast)
        );
    }

    /// <summary>Pitch that a lay takes when none is stated, m.</summary>
    /// <param name="lay">Kind of lay.</param>
    /// <param name="overallM">Diameter over the enamel, m.</param>
    public static double DefaultPitchM(Lay lay, double overallM) => lay == Lay.Even ? EvenPitchRatio * overallM : ScatteredPitchM;

    /// <summary>Wander that a lay takes when none is stated, m.</summary>
    /// <param name="lay">Kind of lay.</param>
    public static double DefaultJitterM(Lay lay) => lay == Lay.Even ? 0 : ScatteredJitterM;
}
