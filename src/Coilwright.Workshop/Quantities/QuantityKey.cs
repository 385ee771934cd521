namespace Coilwright.Workshop.Quantities;

/// <summary>Keys of quantities as they stand in files and records. What is known of each: <see cref="Quantity"/>.</summary>
public static class QuantityKey
{
    public const string DcResistance = "dcResistance";
    public const string AcResistance = "acResistance";
    public const string Inductance = "inductance";
    public const string AirInductance = "airInductance";
    public const string Q = "q";
    public const string Capacitance = "capacitance";
    public const string LoadedPeak = "loadedPeak";
    public const string LoadedPeakGain = "loadedPeakGain";
    public const string UnloadedPeak = "unloadedPeak";
    public const string Turns = "turns";
    public const string Build = "build";
    public const string BareDiameter = "bareDiameter";
    public const string OverallDiameter = "overallDiameter";
    public const string OuterLength = "outerLength";
    public const string OuterWidth = "outerWidth";
    public const string MeanTurnLength = "meanTurnLength";
    public const string WireLength = "wireLength";
    public const string WireMass = "wireMass";
    public const string WireResistance = "wireResistance";
    public const string ResistancePerLength = "resistancePerLength";
    public const string Fill = "fill";
    public const string Output = "output";
    public const string Hum = "hum";
    public const string PoleField = "poleField";
    public const string FirstSwing = "firstSwing";
    public const string Charge = "charge";
    public const string ChargeField = "chargeField";
    public const string SetOffset = "setOffset";
}
