using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Web.Views;

/// <summary>What a final test asks of one quantity, in words beside its field.</summary>
public static class TestRange
{
    /// <summary>"7.45 kΩ to 8.07 kΩ at 20 °C, by the golden piece".</summary>
    public static string Words(TestLine line)
    {
        string at = line.Quantity == QuantityKey.DcResistance ? " at 20 °C" : "";
        double room = line.Reference * line.Tolerance;
        return $"{Write(line, line.Reference - room)} to {Write(line, line.Reference + room)}{at}, by the {From(line)}";
    }

    /// <summary>What it is held against.</summary>
    public static string Value(TestLine line) =>
        Write(line, line.Reference) + (line.Quantity == QuantityKey.DcResistance ? " at 20 °C" : "");

    /// <summary>How far off it may be.</summary>
    public static string Percent(TestLine line) => (100 * line.Tolerance).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    private static string From(TestLine line) => line.IsGolden ? "golden piece" : "recipe";

    private static string Write(TestLine line, double si) =>
        line.Quantity switch
        {
            QuantityKey.DcResistance or QuantityKey.AcResistance => ForecastNumberFormatter.Write(si, "Ω"),
            QuantityKey.Inductance => ForecastNumberFormatter.Write(si, "H"),
            QuantityKey.LoadedPeak => ForecastNumberFormatter.Write(si, "Hz"),
            _ => si.ToString("0.00", CultureInfo.InvariantCulture),
        };
}
