using System.Globalization;
using Coilwright.Analysis.Comparisons;
using Coilwright.Physics;

namespace Coilwright.Papers.Formatting;

/// <summary>Differences between two designs in workshop words, each with the half width of its own 95 % interval.</summary>
public static class ComparisonFormatter
{
    /// <summary>The change with its interval, for example "+26 ±7 %".</summary>
    public static string Change(ComparisonLine line)
    {
        (string value, string half, string unit) = Parts(line);
        return string.Join(' ', ((string[])[value, half, unit]).Where(part => part.Length > 0));
    }

    /// <summary>
    /// The change from the first to the second: decibels for levels and output, per cent for the rest, the bare difference where there is
    /// no ratio.
    /// </summary>
    /// <returns>Value, half its 95 % interval with ± (empty when none), and unit.</returns>
    public static (string Value, string Half, string Unit) Parts(ComparisonLine line) =>
        line switch
        {
            { Unit: "dB" or "dBV", Difference: { } level } => Signed(level, 1, "dB"),
            { Unit: "V·s/m", Ratio: { } output } => Signed(Map(output, ratio => 20 * Math.Log10(ratio)), 1, "dB"),
            { Ratio: { } part } => Signed(Map(part, ratio => 100 * (ratio - 1)), 1, "%"),
            { Difference: { } difference } => Bare(difference, line.Unit),
            { First: null, Second: not null } => ("appears", "", ""),
            { First: not null, Second: null } => ("vanishes", "", ""),
            _ => ("–", "", ""),
        };

    private static Estimate Map(Estimate estimate, Func<double, double> to) =>
        new(to(estimate.Value), to(estimate.Low), to(estimate.High), estimate.Basis);

    /// <summary>One more digit where the change is small, one less where it is large.</summary>
    private static (string, string, string) Signed(Estimate change, int decimals, string unit)
    {
        double half = (change.High - change.Low) / 2;
        bool small = Math.Abs(change.Value) < 1 || half < 0.05,
            large = half >= 1 && Math.Abs(change.Value) >= 10;
        int digits = (small, large) switch
        {
            (true, _) => decimals + 1,
            (_, true) => decimals - 1,
            _ => decimals,
        };
        string format = digits == 0 ? "0" : "0." + new string('0', digits);
        string value = Math.Round(change.Value, digits).ToString($"+{format};−{format};{format}", CultureInfo.InvariantCulture);
        return (value, Math.Round(half, digits) > 0 ? "±" + half.ToString(format, CultureInfo.InvariantCulture) : "", unit);
    }

    private static (string, string, string) Bare(Estimate difference, string unit)
    {
        string value = FigureFormatter.Value(Math.Abs(difference.Value), unit),
            half = FigureFormatter.Value((difference.High - difference.Low) / 2, unit);
        return ((difference.Value < 0 ? "−" : "+") + value, "±" + half, "");
    }
}
