using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Papers.Spec;

/// <summary>Readings in workshop words, the same on every paper.</summary>
internal static class ReadingFormatter
{
    private const int Digits = 4;

    public static string Name(PieceReading reading) =>
        Quantity.Find(reading.Quantity) is { Beside: StandsBeside.Frequency } known
            ? known.Label + Frequency(reading)
            : FigureFormatter.Name(reading.Quantity);

    /// <summary>The value that is compared, or why there is none.</summary>
    public static string Value(PieceReading reading)
    {
        string flag = reading.Flag.Length > 0 ? reading.Flag : "–";
        return reading.IsNumber ? Value(reading, reading.Comparable) : flag;
    }

    /// <summary>Another value of the same quantity, such as a limit.</summary>
    public static string Value(PieceReading reading, double si) => FigureFormatter.Value(si, UnitOf(reading.Quantity), Digits);

    public static string Interval(PieceReading reading)
    {
        string cold = reading.Quantity == QuantityKey.DcResistance && reading.TemperatureC is null ? ", temperature unknown" : "";
        return reading switch
        {
            { IsNumber: true, HalfPart: { } half } => string.Create(CultureInfo.InvariantCulture, $"±{100 * half:0.##} %{cold}"),
            { IsNumber: true } => "not stated",
            _ => "–",
        };
    }

    /// <summary>Temperature and instrument.</summary>
    public static string Conditions(PieceReading reading)
    {
        string warm = reading switch
        {
            { TemperatureC: { } celsius } => "read at " + QuantityParser.Format(celsius, QuantityKind.Temperature),
            { Quantity: QuantityKey.DcResistance } => "temperature not written down",
            _ => "",
        };
        return string.Join(", ", new[] { warm, reading.Instrument }.Where(part => part.Length > 0));
    }

    public static string Signed(double part) =>
        string.Create(CultureInfo.InvariantCulture, $"{(part < 0 ? "−" : "+")}{Math.Abs(100 * part):0.0} %");

    private static string Frequency(PieceReading reading) =>
        reading.AtHz is { } hertz ? " at " + FigureFormatter.Value(hertz, "Hz") : ", frequency not stated";

    private static string UnitOf(string quantity) => Quantity.Find(quantity)?.Unit ?? "";
}
