namespace Coilwright.Physics.Wire;

/// <summary>What a length of annealed copper wire resists and weighs. SI units, °C.</summary>
/// <remarks>
/// Standard annealed copper: 1/58 Ω·mm²/m at 20 °C and 0.00393 per kelvin [IEC60028], read in two summaries of it; density 8,890 kg/m³
/// from its mass resistivity, 0.15328 Ω·g/m². Wire on the market conducts 100 to 102 % of this.
/// </remarks>
public static class CopperWire
{
    /// <summary>Resistivity of standard annealed copper at 20 °C, Ω·m.</summary>
    public const double ResistivityAt20C = 1 / 58e6;

    /// <summary>Conductivity of standard annealed copper at 20 °C, S/m: what AWG tables are printed for.</summary>
    public const double StandardConductivitySPerM = 58e6;

    /// <summary>
    /// Conductivity behind the nominal resistances of metric winding wire, S/m (found from the nominals printed after IEC 60317-0-1
    /// [WireIEC]; its limits stand for 58 and 59 MS/m).
    /// </summary>
    public const double MetricConductivitySPerM = 58.5e6;

    /// <summary>Temperature coefficient of resistance at 20 °C, 1/K.</summary>
    public const double TemperatureCoefficientAt20C = 0.00393;

    /// <summary>Density, kg/m³.</summary>
    public const double DensityKgPerM3 = 8890;

    /// <summary>Enamel density when the kind is not known, kg/m³ (read for polyvinyl acetal resin; the others lie within 15 %).</summary>
    public const double TypicalEnamelDensityKgPerM3 = 1200;

    /// <summary>Cross-section of a round wire, m².</summary>
    /// <param name="diameterM">Its diameter, m.</param>
    public static double AreaM2(double diameterM) => Math.PI / 4 * diameterM * diameterM;

    /// <summary>Resistance per metre of a bare diameter, Ω/m; the linear law of temperature is meant for −40 to 155 °C.</summary>
    /// <param name="bareDiameterM">Diameter without enamel, m, 1 µm…10 mm.</param>
    /// <param name="temperatureC">Temperature of the wire, °C, −200…300.</param>
    /// <param name="conductivitySPerM">Conductivity of the copper at 20 °C, S/m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double OhmPerM(double bareDiameterM, double temperatureC = 20, double conductivitySPerM = StandardConductivitySPerM) =>
        TemperatureFactor(temperatureC) / conductivitySPerM / AreaM2(Require.InRange(bareDiameterM, 1e-6, 0.01));

    /// <summary>The bare diameter that has this resistance per metre, m.</summary>
    /// <param name="ohmPerM">Resistance per metre, Ω/m, 0.0001…1,000,000.</param>
    /// <param name="temperatureC">Temperature of the wire, °C, −200…300.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double BareDiameterFromOhmPerM(double ohmPerM, double temperatureC = 20) =>
        Math.Sqrt(4 * ResistivityAt20C * TemperatureFactor(temperatureC) / (Math.PI * Require.InRange(ohmPerM, 1e-4, 1e6)));

    /// <summary>Resistance at a temperature over resistance at 20 °C: 1 + 0.00393 (T − 20).</summary>
    /// <param name="temperatureC">Temperature of the wire, °C, −200…300.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static double TemperatureFactor(double temperatureC) =>
        1 + TemperatureCoefficientAt20C * (Require.InRange(temperatureC, -200, 300) - 20);

    /// <summary>What a resistance read at <paramref name="temperatureC"/> would be at 20 °C, Ω.</summary>
    /// <param name="ohm">The resistance read, Ω.</param>
    /// <param name="temperatureC">Temperature of the wire, °C, −200…300.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static double CorrectTo20C(double ohm, double temperatureC) => ohm / TemperatureFactor(temperatureC);

    /// <summary>What a resistance at 20 °C is at <paramref name="temperatureC"/>, Ω.</summary>
    /// <param name="ohmAt20C">Resistance at 20 °C, Ω.</param>
    /// <param name="temperatureC">Temperature of the wire, °C, −200…300.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static double CorrectFrom20C(double ohmAt20C, double temperatureC) => ohmAt20C * TemperatureFactor(temperatureC);

    /// <summary>Mass per metre of the copper alone, kg/m.</summary>
    /// <param name="bareDiameterM">Diameter without enamel, m.</param>
    public static double BareMassKgPerM(double bareDiameterM) => DensityKgPerM3 * AreaM2(bareDiameterM);

    /// <summary>Mass per metre of the copper with its enamel, kg/m.</summary>
    /// <param name="bareDiameterM">Diameter without enamel, m.</param>
    /// <param name="overallDiameterM">Diameter over the enamel, m.</param>
    /// <param name="enamelDensityKgPerM3">Density of the enamel, kg/m³.</param>
    public static double MassKgPerM(
        double bareDiameterM,
        double overallDiameterM,
        double enamelDensityKgPerM3 = TypicalEnamelDensityKgPerM3
    ) => BareMassKgPerM(bareDiameterM) + enamelDensityKgPerM3 * (AreaM2(overallDiameterM) - AreaM2(bareDiameterM));

    /// <summary>
    /// Copper mass per metre of a wire whose resistance per metre at 20 °C was measured, kg/m. Independent of the diameter's tolerance.
    /// </summary>
    /// <param name="ohmPerMAt20C">Resistance per metre at 20 °C, Ω/m, 0.0001…1,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance per metre lies outside its range.</exception>
    public static double BareMassFromOhmPerM(double ohmPerMAt20C) =>
        DensityKgPerM3 * ResistivityAt20C / Require.InRange(ohmPerMAt20C, 1e-4, 1e6);

    /// <summary>Length of wire of a net mass (gross less the empty spool), m.</summary>
    /// <param name="netMassKg">Net mass, kg.</param>
    /// <param name="massKgPerM">Mass per metre of the wire with its enamel, kg/m, 1 µg/m…10 kg/m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass per metre lies outside its range.</exception>
    public static double LengthFromMassM(double netMassKg, double massKgPerM) => netMassKg / Require.InRange(massKgPerM, 1e-9, 10);

    /// <summary>Net mass of a length of wire, kg.</summary>
    /// <param name="lengthM">Length, m.</param>
    /// <param name="massKgPerM">Mass per metre of the wire with its enamel, kg/m.</param>
    public static double MassFromLengthKg(double lengthM, double massKgPerM) => lengthM * massKgPerM;

    /// <summary>Length of wire on a spool from the resistance of the whole of it, m.</summary>
    /// <param name="ohmAt20C">Resistance of the whole at 20 °C, Ω.</param>
    /// <param name="ohmPerMAt20C">Resistance per metre at 20 °C, Ω/m, 0.0001…1,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance per metre lies outside its range.</exception>
    public static double LengthFromOhmM(double ohmAt20C, double ohmPerMAt20C) => ohmAt20C / Require.InRange(ohmPerMAt20C, 1e-4, 1e6);

    /// <summary>Resistance per metre of wire lengthened by <paramref name="stretch"/> (0.01 is 1 %) over that before.</summary>
    /// <param name="stretch">Lengthening as a fraction, 0…0.3.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch lies outside its range.</exception>
    /// <remarks>
    /// The volume stays: a piece grows by 1 + s and its section shrinks by as much, so a metre of stretched wire has 1 + s times the
    /// resistance.
    /// In a finished coil of fixed turns the length in the coil is set by the turns' shape, not by the wire: it takes less of the spool,
    /// and its resistance rises by 1 + s. The same piece measured before and after would rise by (1 + s)².
    /// </remarks>
    public static double StretchFactor(double stretch) => 1 + Require.InRange(stretch, 0, 0.3);

    /// <summary>Diameter after stretching over that before, at constant volume: (1 + s)^−½.</summary>
    /// <param name="stretch">Lengthening as a fraction, 0…0.3.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch lies outside its range.</exception>
    public static double StretchedDiameterFactor(double stretch) => 1 / Math.Sqrt(StretchFactor(stretch));

    /// <summary>
    /// What a winding tension alone does to the wire's resistance, as a <see cref="StretchFactor"/> counts it: the wire lies on the bobbin
    /// elastically stretched.
    /// </summary>
    /// <remarks>
    /// Strain F/(E·A) with E = 117 GPa and Poisson's ratio 0.34 (annealed copper, from memory): the section shrinks by 2·0.34 of the
    /// strain. 14 gf on a 42 AWG
    /// wire are 0.025 %. What lengthens for good beyond the yield is not in it: it is learnt from coils.
    /// </remarks>
    /// <param name="tensionN">Tension, N, 0…50.</param>
    /// <param name="bareDiameterM">Diameter without enamel, m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tension lies outside its range.</exception>
    public static double ElasticStretch(double tensionN, double bareDiameterM) =>
        2 * 0.34 * Math.Min(Require.InRange(tensionN, 0, 50) / (117e9 * AreaM2(bareDiameterM)), ElasticLimit);

    /// <summary>Strain beyond which annealed copper yields in earnest, from memory.</summary>
    private const double ElasticLimit = 0.002;
}
