using System.Collections.Frozen;
using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Papers.Formatting;

/// <summary>Names, values and intervals of figures in workshop words, the same on paper, screen and terminal.</summary>
public static class FigureFormatter
{
    private static readonly FrozenDictionary<string, QuantityKind> s_kinds = new Dictionary<string, QuantityKind>
    {
        ["Ω"] = QuantityKind.Resistance,
        ["H"] = QuantityKind.Inductance,
        ["F"] = QuantityKind.Capacitance,
        ["m"] = QuantityKind.Length,
        ["kg"] = QuantityKind.Mass,
        ["Hz"] = QuantityKind.Frequency,
        ["N"] = QuantityKind.Force,
        ["T"] = QuantityKind.FluxDensity,
        ["V"] = QuantityKind.Voltage,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>A quantity's name in workshop words.</summary>
    public static string Name(string quantity)
    {
        int dot = quantity.LastIndexOf('.');
        return dot > 0
            ? $"{FieldLabels.Inside(quantity[..dot])}, {Name(quantity[(dot + 1)..])}"
            : Quantity.Find(quantity)?.FigureName ?? KeyLabels.Of(quantity);
    }

    /// <summary>The same where a row or a heading begins with it.</summary>
    public static string Heading(string quantity)
    {
        string name = Name(quantity);
        return char.ToUpperInvariant(name[0]) + name[1..];
    }

    /// <summary>A figure's value with as many digits as its interval earns, three at least.</summary>
    public static string Value(Figure figure) => Value(figure.Estimate.Value, figure.Unit, Digits(figure.Estimate));

    /// <summary>A figure's 95 % interval, or "exact".</summary>
    public static string Interval(Figure figure)
    {
        Estimate estimate = figure.Estimate;
        int digits = Digits(estimate);
        return estimate.IsExact ? "exact" : $"{Value(estimate.Low, figure.Unit, digits)} – {Value(estimate.High, figure.Unit, digits)}";
    }

    /// <summary>A figure's value with its 95 % interval behind it.</summary>
    public static string WithInterval(Figure figure) => $"{Value(figure)} ({Interval(figure)})";

    /// <summary>A value in SI with the unit that suits its size.</summary>
    public static string Value(double si, string unit, int digits = 3) =>
        unit switch
        {
            "dB" => si.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) + " dB",
            "dBV" => si.ToString("0.0", CultureInfo.InvariantCulture) + " dBV",
            "V·s/m" => Number(si * 1e3, digits) + " mV per m/s",
            "Wb" => Number(si * 1e6, digits) + " µWb",
            "m²" => Number(si * 1e4, digits) + " cm²",
            "m³" => Number(si * 1e6, digits) + " cm³",
            "1" or "" => Number(si, digits),
            _ when si.Equals(0) => "0 " + (unit == "F" ? "pF" : unit), // nobody says nothing in farads
            _ when s_kinds.TryGetValue(unit, out QuantityKind kind) => Grouped(QuantityParser.Format(si, kind, digits)),
            _ => Number(si, digits) + " " + unit,
        };

    /// <summary>The basis as a word.</summary>
    public static string Basis(Basis basis) =>
        basis switch
        {
            Physics.Basis.Measured => "measured",
            Physics.Basis.Learnt => "learnt",
            Physics.Basis.Forecast => "forecast",
            _ => "assumed",
        };

    /// <summary>A separator after the thousands: 1,136 m.</summary>
    private static string Grouped(string text)
    {
        int from = text.TakeWhile(letter => letter is '-' or '−').Count(),
            whole = text.Skip(from).TakeWhile(char.IsAsciiDigit).Count();
        return whole is > 3 and < 7 ? text.Insert(from + whole - 3, ",") : text;
    }

    private static int Digits(Estimate estimate)
    {
        if (estimate.Value.Equals(0) && !estimate.IsExact)
        {
            return 3;
        }

        double relative = Math.Abs((estimate.High - estimate.Low) / 2 / estimate.Value);
        return estimate.IsExact || !(relative > 0) || !double.IsFinite(relative)
            ? 4
            : Math.Clamp((int)Math.Ceiling(-Math.Log10(relative)) + 1, 3, 5);
    }

    private static string Number(double value, int digits)
    {
        if (!double.IsFinite(value))
        {
            return "–";
        }

        int magnitude = Math.Abs(value) > 0 ? (int)Math.Floor(Math.Log10(Math.Abs(value))) : 0;
        int decimals = Math.Clamp(digits - 1 - magnitude, 0, 12);
        return Math.Round(value, decimals).ToString("#,##0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }
}
