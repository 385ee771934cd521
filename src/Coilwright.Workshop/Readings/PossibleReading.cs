using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>What a coil can read at all. Outside of it a reading is kept and flagged, never dropped.</summary>
public static class PossibleReading
{
    /// <summary>Flag of a reading at which the meter found no connection.</summary>
    public const string Open = "open";

    /// <summary>
    /// What instruments send in place of a number that is over their range (SCPI-1999, volume 1, 7.2.1.4: infinity is 9.9E37; from memory).
    /// </summary>
    public const double OverRange = 9.9e37;

    /// <summary>
    /// Above this no coil reads, broken or not: it is the skin of a hand or the meter's own leakage, Ω. Common practice, no source.
    /// </summary>
    public const double LargestOhm = 20e6;

    /// <summary>Far above any pickup coil, H. Common practice, no source.</summary>
    public const double LargestHenry = 1000;

    /// <summary>Lowest and highest temperature of a coil that is believed, °C: a cold store, and wire just out of an oven.</summary>
    public static readonly Limits Temperature = new(QuantityKind.Temperature, -10, 155, "°C", "23.5 °C");

    /// <summary>What a meter can be asked an inductance at.</summary>
    public static readonly Limits Frequency = new(QuantityKind.Frequency, double.Epsilon, 1e7, "Hz", "1 kHz");

    /// <summary>What a counter can show.</summary>
    public static readonly Limits Turns = Quantity.Turns.Within(double.Epsilon, 1e6, "8000");

    /// <summary>Inductances between which "1,234" is decided.</summary>
    public static readonly Limits Inductance = Quantity.Inductance.Within(1e-6, LargestHenry, "2.4 H");

    /// <summary>
    /// How far from a good coil's ohms a reading may lie to decide what "6,210" means: the two readings lie a factor of 1000 apart,
    /// so that one of them at most lies this near. Our choice.
    /// </summary>
    private const double Reach = 8;

    /// <summary>Resistances between which "6,210" is decided, about that of a good coil.</summary>
    public static Limits Near(double expectedOhm) => new(QuantityKind.Resistance, expectedOhm / Reach, expectedOhm * Reach, "Ω", "6.2 kΩ");

    /// <summary>True for a value that stands for "over range".</summary>
    public static bool IsOverRange(double si) => si >= 0.99 * OverRange;

    /// <summary>Why a value cannot be true of a coil; empty when it can.</summary>
    public static string FlagOf(string quantity, double si) =>
        quantity switch
        {
            QuantityKey.DcResistance when IsOverRange(si) => Open,
            QuantityKey.DcResistance when !(si >= 0 && si <= LargestOhm) => "outside what a coil can read",
            QuantityKey.Inductance when !(si > 0 && si <= LargestHenry) => "outside what a coil can read",
            QuantityKey.Q when !(si > 0 && si <= 1000) => "outside what a coil can read",
            _ => "",
        };
}
