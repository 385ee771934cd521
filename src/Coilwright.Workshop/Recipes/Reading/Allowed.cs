using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// What each kind of field may hold. The ends are wide: they catch slips of unit and sign, not taste. From common practice, no source.
/// </summary>
public static class Allowed
{
    public static Limits CoreLength { get; } = Size(1e-3, 0.3, "66 mm");
    public static Limits CoreWidth { get; } = Size(0.5e-3, 0.1, "6.2 mm");
    public static Limits EndRadius { get; } = Size(0, 0.05, "3.1 mm");
    public static Limits WindingHeight { get; } = Size(0.5e-3, 0.05, "11 mm");
    public static Limits MaxBuild { get; } = Size(0.1e-3, 0.05, "4.3 mm");
    public static Limits Wall { get; } = Size(0.05e-3, 20e-3, "1 mm");
    public static Limits Tape { get; } = Size(0.01e-3, 5e-3, "0.1 mm");
    public static Limits BareDiameter { get; } = Size(0.01e-3, 0.5e-3, "0.063 mm");
    public static Limits Pitch { get; } = Size(0.01e-3, 5e-3, "0.19 mm");
    public static Limits PoleSize { get; } = Size(0.5e-3, 0.1, "4.75 mm");
    public static Limits BladeWidth { get; } = Size(0.5e-3, 0.3, "62 mm");
    public static Limits PoleSpacing { get; } = Size(1e-3, 0.05, "10.4 mm");
    public static Limits Place { get; } = Size(-0.3, 0.3, "9 mm");
    public static Limits PartSize { get; } = Size(0.1e-3, 0.3, "12.5 mm");
    public static Limits Sheet { get; } = Size(0.05e-3, 10e-3, "0.5 mm");
    public static Limits Clearance { get; } =
        Size(0.1e-3, 0.03, "2.5 mm") with
        {
            Outside = "the strings must lie above the highest pole top, within reach of it",
        };
    public static Limits ScaleLength { get; } = Size(0.2, 1.5, "648 mm");
    public static Limits FromBridge { get; } = Size(1e-3, 0.6, "45 mm");
    public static Limits StringDiameter { get; } = Size(0.1e-3, 5e-3, "0.25 mm");
    public static Limits Tension { get; } = new(QuantityKind.Force, 0.005, 10, "N", "14 gf");
    public static Limits Speed { get; } = new(QuantityKind.Speed, 1, 20_000, "rpm", "1200 rpm");
    public static Limits Stretch { get; } = new(QuantityKind.Fraction, 0, 0.2, "%", "0.5 %");
    public static Limits CoilCapacitance { get; } = new(QuantityKind.Capacitance, 1e-12, 10e-9, "pF", "120 pF");
    public static Limits OhmPerM { get; } = new(QuantityKind.ResistancePerLength, 0.05, 250, "Ω/m", "5.544 Ω/m");
    public static Limits Conductivity { get; } = new(QuantityKind.Conductivity, 0, 70e6, "MS/m", "2 MS/m");
    public static Limits Polarisation { get; } = new(QuantityKind.FluxDensity, 0, 2.5, "T", "0.31 T");
    public static Limits Saturation { get; } = new(QuantityKind.FluxDensity, 0.1, 3, "T", "1.8 T");
    public static Limits Tolerance { get; } = new(QuantityKind.Fraction, 1e-4, 1, "%", "4 %");
    public static Limits DcResistance { get; } = new(QuantityKind.Resistance, 0.1, 1e6, "kΩ", "6.2 kΩ");
    public static Limits Inductance { get; } = new(QuantityKind.Inductance, 1e-6, 100, "H", "2.4 H");
    public static Limits Frequency { get; } = new(QuantityKind.Frequency, 1, 1e6, "Hz", "1 kHz");
    public static Limits Temperature { get; } = new(QuantityKind.Temperature, -40, 155, "°C", "20 °C");
    public static Limits Time { get; } = new(QuantityKind.Duration, 1, 30 * 86400, "min", "10 min");
    public static Limits LossResistance { get; } = new(QuantityKind.Resistance, 1, 1e9, "kΩ", "1 MΩ");
    public static Limits PotResistance { get; } = new(QuantityKind.Resistance, 100, 100e6, "kΩ", "500 kΩ");
    public static Limits ToneCapacitor { get; } = new(QuantityKind.Capacitance, 10e-12, 10e-6, "nF", "22 nF");
    public static Limits RetainerCapacitor { get; } = new(QuantityKind.Capacitance, 1e-12, 1e-6, "nF", "1 nF");
    public static Limits OutputResistance { get; } = new(QuantityKind.Resistance, 0.001, 1e6, "kΩ", "1 kΩ");
    public static Limits Mutual { get; } = new(QuantityKind.Inductance, -100, 100, "H", "0.35 H");
    public static Limits LoadCapacitance { get; } = new(QuantityKind.Capacitance, 0, 1e-6, "nF", "500 pF");
    public static Limits LeadLength { get; } = new(QuantityKind.Length, 1e-3, 20, "m", "0.3 m");
    public static Limits CableLength { get; } = Size(0, 200, "5 m");
    public static Limits CablePerLength { get; } = new(QuantityKind.CapacitancePerLength, 1e-12, 10e-9, "pF/m", "100 pF/m");

    /// <summary>Overall diameter: bare wire with at least a breath of enamel.</summary>
    public static Limits OverallDiameter { get; } = Size(0.011e-3, 0.7e-3, "0.071 mm");

    private static Limits Size(double min, double max, string example) => new(QuantityKind.Length, min, max, "mm", example);
}
