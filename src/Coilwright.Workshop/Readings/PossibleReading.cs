using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Readings;

/// <summary>What a coil can read at all. Outside of it a reading is kept and flagged, never dropped.</summary>
public static class PossibleReading
{
    /// <summary>Flag of a reading at which the meter found no connection.</summary>
    public const string Open = "open";

    /// <summary>What instruments send in place of a number that is over their range (SCPI-1999, volume 1, 7.2.1.4: infinity is 9.9E37; from memory).</summary>
    public const double OverRange = 9.9e37;

    /// <summary>Above this no coil reads, broken or not: it is the skin of a hand or the meter's own leakage, Ω. Common practice, no source.</summary>
    public const double LargestOhm = 20e6;

    /// <summary>Far above any pickup coil, H. Common practice, no source.</summary>
    public const double LargestHenry = 1000;

    /// <summary>Lowest and highest temperature of a coil that is believed, °C: a cold store, and wire just out of an oven.</summary>
    public static readonly Limits Temperature = new(QuantityKind.Temperature, -10, 155, "°C", "23.5 °C");

    /// <summary>True for a value that stands for "over range".</summary>
    public static bool IsOverRange(double si) => si >= 0.99 * OverRange;

    /// <summary>Why a value cannot be true of a coil; empty when it can.</summary>
    public static string FlagOf(string quantity, double si) => quantity switch
    {
        "dcResistance" when IsOverRange(si) => Open,
        "dcResistance" when !(si >= 0 && si <= LargestOhm) => "outside what a coil can read",
        "inductance" when !(si > 0 && si <= LargestHenry) => "outside what a coil can read",
        "q" when !(si > 0 && si <= 1000) => "outside what a coil can read",
        _ => "",
    };
}
