using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views;

/// <summary>How a forecast number is written for people.</summary>
public static class ForecastNumberFormatter
{
    /// <summary>Value with unit, three significant digits.</summary>
    public static string Value(Figure figure) => Write(figure.Value, figure.Unit);

    /// <summary>Both ends of the 95 % interval, their unit once where it is the same, or "exact".</summary>
    public static string Interval(Estimate estimate, string unit)
    {
        string low = Write(estimate.Low, unit),
            high = Write(estimate.High, unit);
        string[] lower = low.Split(' ', 2),
            upper = high.Split(' ', 2);
        bool sameUnit = lower.Length == 2 && upper.Length == 2 && lower[1] == upper[1];
        string from = sameUnit ? lower[0] : low;
        return estimate.IsExact ? "exact" : $"{from} to {high}";
    }

    /// <summary>A number in an SI unit as people write it.</summary>
    public static string Write(double si, string unit) =>
        unit switch
        {
            "V·s/m" or "Wb" or "m²" or "dB" or "dBV" => FigureFormatter.Value(si, unit),
            "1" or "" => Plain(si),
            _ => KindOf(unit) is { } kind ? QuantityParser.Format(si, kind) : $"{Plain(si)} {unit}",
        };

    private static QuantityKind? KindOf(string unit) =>
        unit switch
        {
            "Ω" => QuantityKind.Resistance,
            "H" => QuantityKind.Inductance,
            "F" => QuantityKind.Capacitance,
            "m" => QuantityKind.Length,
            "kg" => QuantityKind.Mass,
            "Hz" => QuantityKind.Frequency,
            "T" => QuantityKind.FluxDensity,
            "V" => QuantityKind.Voltage,
            _ => null,
        };

    private static string Plain(double value)
    {
        int decimals = Math.Abs(value) switch
        {
            >= 100 => 0,
            >= 10 => 1,
            >= 1 => 2,
            _ => 3,
        };
        return Math.Round(value, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
