namespace Coilwright.Analysis.Quantities;

/// <summary>Keys of quantities as they stand in files and records. What is known of each stands in the workshop's catalogue.</summary>
public static class QuantityKey
{
    /// <summary>Resistance for direct current, Ω; compared at 20 °C.</summary>
    public const string DcResistance = "dcResistance";

    /// <summary>Real part of the series impedance at a frequency, Ω.</summary>
    public const string AcResistance = "acResistance";

    /// <summary>Series inductance, H, at a frequency where it was read.</summary>
    public const string Inductance = "inductance";

    /// <summary>Inductance without cores and metalwork, H.</summary>
    public const string AirInductance = "airInductance";

    /// <summary>ωL/R at a frequency.</summary>
    public const string Q = "q";

    /// <summary>Capacitance across the terminals, F.</summary>
    public const string Capacitance = "capacitance";

    /// <summary>Resonance on a load, Hz.</summary>
    public const string LoadedPeak = "loadedPeak";

    /// <summary>Height of that resonance, dB over 20 Hz.</summary>
    public const string LoadedPeakGain = "loadedPeakGain";

    /// <summary>Resonance with nothing on it, Hz.</summary>
    public const string UnloadedPeak = "unloadedPeak";

    /// <summary>Turns of a winding.</summary>
    public const string Turns = "turns";

    /// <summary>Radial thickness of a winding, m.</summary>
    public const string Build = "build";

    /// <summary>Diameter of the copper, m.</summary>
    public const string BareDiameter = "bareDiameter";

    /// <summary>Diameter of the wire with its film, m.</summary>
    public const string OverallDiameter = "overallDiameter";

    /// <summary>Length of a winding over all, m.</summary>
    public const string OuterLength = "outerLength";

    /// <summary>Width of a winding over all, m.</summary>
    public const string OuterWidth = "outerWidth";

    /// <summary>Wire length over turns, m.</summary>
    public const string MeanTurnLength = "meanTurnLength";

    /// <summary>Wire in a winding, m.</summary>
    public const string WireLength = "wireLength";

    /// <summary>Mass of that wire with its film, kg.</summary>
    public const string WireMass = "wireMass";

    /// <summary>Ohms per metre of the wire in a coil at 20 °C, Ω/m.</summary>
    public const string WireResistance = "wireResistance";

    /// <summary>Ohms per metre of a spool at 20 °C, Ω/m.</summary>
    public const string ResistancePerLength = "resistancePerLength";

    /// <summary>Share of its room that a winding takes.</summary>
    public const string Fill = "fill";

    /// <summary>Flux linkage per velocity of a string, V·s/m.</summary>
    public const string Output = "output";

    /// <summary>Effective area in an even alternating field, m².</summary>
    public const string Hum = "hum";

    /// <summary>Flux density over a pole at the jig's distance, T.</summary>
    public const string PoleField = "poleField";

    /// <summary>Sign of the first swing of a plucked string, 1 or −1.</summary>
    public const string FirstSwing = "firstSwing";

    /// <summary>What magnets were charged to, part of full.</summary>
    public const string Charge = "charge";

    /// <summary>What magnets were charged to, T at the jig's distance.</summary>
    public const string ChargeField = "chargeField";

    /// <summary>What is meant of an output in a set, dB.</summary>
    public const string SetOffset = "setOffset";

    /// <summary>Turns in one pass from flange to flange.</summary>
    public const string TurnsPerLayer = "turnsPerLayer";

    /// <summary>Passes from flange to flange; the last may be partial.</summary>
    public const string Layers = "layers";

    /// <summary>What a meter sees between the wires at 1 kHz, Ω, its angle left out.</summary>
    public const string Impedance = "impedance";

    /// <summary>The same where the bare response stands highest, Ω.</summary>
    public const string PeakImpedance = "peakImpedance";

    /// <summary>Share of the capacitance that the turns have among themselves, F.</summary>
    public const string WindingCapacitance = "winding";

    /// <summary>Share of the leads, F.</summary>
    public const string LeadCapacitance = "leads";

    /// <summary>Share to poles, magnets, plates and covers, F.</summary>
    public const string GroundedCapacitance = "grounded";

    /// <summary>Share from winding to winding, F.</summary>
    public const string BetweenCoils = "betweenCoils";

    /// <summary>Coupling factor of the first two coils.</summary>
    public const string Coupling = "coupling";

    /// <summary>Difference of the first two coils' resistance over their mean.</summary>
    public const string ResistanceMismatch = "resistanceMismatch";

    /// <summary>Difference of the first two coils' inductance over their mean.</summary>
    public const string InductanceMismatch = "inductanceMismatch";

    /// <summary>Height of the unloaded resonance, dB over 20 Hz.</summary>
    public const string UnloadedPeakGain = "unloadedPeakGain";

    /// <summary>Frequency of the loaded resonance over its half-power width.</summary>
    public const string LoadedPeakQ = "loadedPeakQ";

    /// <summary>Where the loaded response has fallen by 3 dB, Hz.</summary>
    public const string Minus3Db = "minus3Db";

    /// <summary>Level at 20 Hz, dB over 1 V.</summary>
    public const string Level = "level";

    /// <summary>Thermal noise from 20 Hz to 20 kHz, dB over 1 V.</summary>
    public const string Noise = "noise";

    /// <summary>Flux through the whole winding that a string at rest causes, Wb.</summary>
    public const string Linkage = "linkage";

    /// <summary>Volts per metre a second of one string, V·s/m.</summary>
    public const string Sensitivity = "sensitivity";

    /// <summary>Vertical flux density of the magnets at a string's axis, T.</summary>
    public const string FieldAtStrings = "fieldAtStrings";

    /// <summary>What a uniform field leaves of the hum against all coils adding, dB.</summary>
    public const string HumResidual = "residual";

    /// <summary>Flux linkage in a hum field that changes along x, m³.</summary>
    public const string GradientX = "gradientX";

    /// <summary>Flux linkage in a hum field that changes along y, m³.</summary>
    public const string GradientY = "gradientY";

    /// <summary>Flux linkage in a hum field that changes along z, m³.</summary>
    public const string GradientZ = "gradientZ";
}
