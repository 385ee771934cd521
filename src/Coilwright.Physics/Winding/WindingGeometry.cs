using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Winding;

/// <summary>Turns, wire and bobbin to build, fill, wire length, mass and resistance.</summary>
/// <remarks>
/// The winding fills the window's height evenly and grows outward in equal layers of thickness build ÷ layers. A turn of layer
/// k lies k − ½ thicknesses outside the former, on the curve that keeps the straights and widens the corners. The last layer holds what is
/// left.
/// </remarks>
public static class WindingGeometry
{
    /// <summary>Insulated section over occupied section of neat square layers, π/4: the default for an even lay.</summary>
    public const double SquarePacking = Math.PI / 4;

    /// <summary>Insulated section over occupied section of perfectly nested layers, π/√12: no winding passes it.</summary>
    public const double HexagonalPacking = 0.90689968211710892;

    /// <summary>Winds one coil.</summary>
    /// <param name="bobbin">The former and its window, 10 µm…1 m high.</param>
    /// <param name="bareDiameterM">Diameter of the copper, m, 1 µm…10 mm.</param>
    /// <param name="overallDiameterM">Diameter over the enamel, m, <paramref name="bareDiameterM"/>…20 mm.</param>
    /// <param name="winding">
    /// Turns, 0.25…1,000,000; pitch; stretch, 0…0.3; a measured build, 1 µm…1 m, overrides the packing.
    /// </param>
    /// <param name="packingFactor">Insulated section over occupied section, 0.05…<see cref="HexagonalPacking"/>.</param>
    /// <param name="ohmPerMAt20C">Resistance per metre of the unstretched wire at 20 °C, Ω/m.</param>
    /// <param name="enamelDensityKgPerM3">Density of the enamel, kg/m³.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static WoundCoil Wind(
        Bobbin bobbin,
        double bareDiameterM,
        double overallDiameterM,
        WindingModel winding,
        double packingFactor,
        double ohmPerMAt20C,
        double enamelDensityKgPerM3
    )
    {
        ArgumentNullException.ThrowIfNull(bobbin);
        ArgumentNullException.ThrowIfNull(winding);
        Require.InRange(bareDiameterM, 1e-6, 0.01);
        Require.InRange(overallDiameterM, bareDiameterM, 0.02);
        Require.InRange(packingFactor, 0.05, HexagonalPacking);
        double heightM = Require.InRange(bobbin.WindingHeightM, 1e-5, 1);
        double turns = Require.InRange(winding.Turns, LayForecast.LeastTurns, 1e6);
        double sectionM2 = turns * CopperWire.AreaM2(overallDiameterM);
        double buildM = BuildM(winding, overallDiameterM, sectionM2 / (packingFactor * heightM));
        double turnsPerLayer = TurnsPerLayer(heightM, overallDiameterM, winding.PitchM);
        double lengthM = WireLengthM(bobbin, turns, turnsPerLayer, buildM);
        double massKgPerM = CopperWire.MassKgPerM(bareDiameterM, overallDiameterM, enamelDensityKgPerM3);
        double stretch = CopperWire.StretchFactor(winding.Stretch);
        return new WoundCoil
        {
            Turns = turns,
            TurnsPerLayer = turnsPerLayer,
            Layers = turns / turnsPerLayer,
            BuildM = buildM,
            Fill = sectionM2 / (heightM * bobbin.MaxBuildM),
            PackingFactor = sectionM2 / (heightM * buildM),
            OuterLengthM = bobbin.CoreLengthM + 2 * buildM,
            OuterWidthM = bobbin.CoreWidthM + 2 * buildM,
            MeanTurnM = lengthM / turns,
            WireLengthM = lengthM,
            WireMassKg = lengthM * massKgPerM / stretch,
            DcResistanceAt20COhm = lengthM * ohmPerMAt20C * stretch,
            FitsWindow = bobbin.MaxBuildM is double roomM ? buildM <= roomM : null,
        };
    }

    private static double BuildM(WindingModel winding, double overallDiameterM, double packedM) =>
        winding.MeasuredBuildM is double measuredM
            ? Math.Max(overallDiameterM, Require.InRange(measuredM, 1e-6, 1)) // wire may scatter above a build of one layer
            : Math.Max(overallDiameterM, packedM);

    /// <summary>
    /// Turns in one pass from flange to flange: window ÷ pitch, or ÷ overall diameter where no pitch is stated; never below 1.
    /// </summary>
    /// <param name="heightM">Space between the flanges, m.</param>
    /// <param name="overallDiameterM">Diameter over the enamel, m, above zero.</param>
    /// <param name="pitchM">Traverse travel per turn, m, above zero; null when not stated.</param>
    public static double TurnsPerLayer(double heightM, double overallDiameterM, double? pitchM) =>
        Math.Max(1, heightM / (pitchM ?? overallDiameterM));

    /// <summary>Wire length of the layers, m, in closed form.</summary>
    /// <param name="bobbin">The former.</param>
    /// <param name="turns">Turns, above zero; need not be whole.</param>
    /// <param name="turnsPerLayer">Turns in one layer, above zero; need not be whole.</param>
    /// <param name="buildM">Radial thickness of the winding, m.</param>
    /// <remarks>
    /// With n turns a layer, m full layers and r turns in the last, the length at distance d being P + 2πd and layer k lying at (k − ½)t,
    /// the full
    /// layers sum to n (mP + πtm²) and the last adds r (P + 2πt(m + ½)): begun, it already lies as far out as a whole one.
    /// </remarks>
    public static double WireLengthM(Bobbin bobbin, double turns, double turnsPerLayer, double buildM)
    {
        ArgumentNullException.ThrowIfNull(bobbin);
        double layers = turns / turnsPerLayer;
        double full = Math.Floor(layers);
        double partial = layers - full;
        double layerM = buildM / layers;
        double fullLengthM = full * bobbin.TurnLengthM(0) + Math.PI * layerM * full * full;
        double lastLengthM = partial > 0 ? partial * bobbin.TurnLengthM(layerM * (full + 0.5)) : 0;
        return turnsPerLayer * (fullLengthM + lastLengthM);
    }
}
