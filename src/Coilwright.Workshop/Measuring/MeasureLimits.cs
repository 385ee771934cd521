using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Measuring;

/// <summary>What may be typed about a measurement; the unit is that of a bare number.</summary>
public static class MeasureLimits
{
    /// <summary>A capacitor hung on the pickup to move its resonance.</summary>
    public static Limits Capacitor { get; } = new(QuantityKind.Capacitance, 1e-12, 1e-6, "pF", "470 pF");

    /// <summary>Where the resonance was found.</summary>
    public static Limits Peak { get; } = new(QuantityKind.Frequency, 10, 1e6, "kHz", "4.14 kHz");

    /// <summary>How well the capacitors are known.</summary>
    public static Limits Tolerance { get; } = new(QuantityKind.Fraction, 0, 0.3, "%", "1 %");

    /// <summary>The winding's resistance by meter.</summary>
    public static Limits Winding { get; } = new(QuantityKind.Resistance, 0.1, 1e6, "Ω", "6.2 kΩ");

    /// <summary>An inductance by meter.</summary>
    public static Limits MeterInductance { get; } = new(QuantityKind.Inductance, 1e-6, 1e3, "H", "2.53 H");

    /// <summary>Frequency of that meter.</summary>
    public static Limits MeterFrequency { get; } = new(QuantityKind.Frequency, 1, 1e6, "Hz", "1 kHz");

    /// <summary>What hung on the pickup while a curve was read: capacitance of cable and capacitor together.</summary>
    public static Limits HungCapacitance { get; } = new(QuantityKind.Capacitance, 0, 1e-6, "pF", "470 pF");

    /// <summary>What hung on it: controls and input together as one resistance.</summary>
    public static Limits HungResistance { get; } = new(QuantityKind.Resistance, 1e3, 1e9, "Ω", "1 MΩ");

    /// <summary>First frequency of the measurement signal.</summary>
    public static Limits SignalFrom { get; } = new(QuantityKind.Frequency, 5, 2000, "Hz", "20 Hz");

    /// <summary>Its last frequency.</summary>
    public static Limits SignalTo { get; } = new(QuantityKind.Frequency, 4000, 90_000, "Hz", "20 kHz");

    /// <summary>Its length.</summary>
    public static Limits SignalLength { get; } = new(QuantityKind.Duration, 1, 60, "s", "10 s");

    /// <summary>The resistor between the two channels of a recording.</summary>
    public static Limits Resistor { get; } = new(QuantityKind.Resistance, 10, 10e6, "Ω", "100 kΩ");

    /// <summary>Input resistance of the second channel.</summary>
    public static Limits InputResistance { get; } = new(QuantityKind.Resistance, 1e3, 1e12, "Ω", "1 MΩ");

    /// <summary>Capacitance of the second channel and its leads.</summary>
    public static Limits InputCapacitance { get; } = new(QuantityKind.Capacitance, 0, 1e-7, "pF", "30 pF");
}
