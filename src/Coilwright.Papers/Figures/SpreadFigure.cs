using System.Globalization;
using Coilwright.Analysis.Spread;
using Coilwright.Papers.Formatting;

namespace Coilwright.Papers.Figures;

/// <summary>
/// How the pieces of a run scatter in one quantity: a bar a step, 95 % of them as a band, the target's limits as named lines.
/// </summary>
public static class SpreadFigure
{
    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="one">The quantity and its scatter.</param>
    public static string Svg(QuantitySpread one)
    {
        AxisUnit unit = UnitOf(one);
        double[] shares = [.. Bins(one).Select(bin => bin.Share * 100)];
        double[] limits = one.Target is { } target ? [target.Low, target.High] : [];
        PlotAxis x = PlotAxis.Round(
                [one.HistogramLow / unit.Si, one.HistogramHigh / unit.Si, .. limits.Select(limit => limit / unit.Si)],
                unit.Beside(FigureFormatter.Name(one.Name)),
                withZero: false
            ),
            y = PlotAxis.Round(shares.Append(1), "Pieces in a step, %");
        PlotSheet sheet = new("spread-" + one.Name.Replace('.', '-'), x, y, height: 150);
        sheet.Band([(one.Low / unit.Si, 0, y.High), (one.High / unit.Si, 0, y.High)]);
        double step = (one.HistogramHigh - one.HistogramLow) / one.Histogram.Count / unit.Si;
        foreach ((double from, double to, double share) in Bins(one))
        {
            sheet.Bar((from + to) / 2 / unit.Si, share * 100, step);
        }

        sheet.Label((one.Low + one.High) / 2 / unit.Si, y.High, "95 % of pieces", (0, 14), "middle");
        Limits(sheet, one, unit);
        return sheet.Svg("spread", "Spread of " + FigureFormatter.Name(one.Name), Words(one));
    }

    /// <summary>What it shows, in a line.</summary>
    public static string Words(QuantitySpread one)
    {
        string outside = one.OutsideTarget is { } part
            ? string.Create(CultureInfo.InvariantCulture, $"; {part * 100:0.#} % lie outside the target")
            : "";
        return $"95 % of pieces from {FigureFormatter.Value(one.Low, one.Unit)} to {FigureFormatter.Value(one.High, one.Unit)}{outside}";
    }

    /// <summary>Names of the columns of <see cref="Rows"/>.</summary>
    public static IReadOnlyList<string> Header(QuantitySpread one)
    {
        string unit = UnitOf(one).Name is { Length: > 0 } name ? $" [{name}]" : "";
        return ["from" + unit, "to" + unit, "pieces [%]"];
    }

    /// <summary>The same in numbers.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Rows(QuantitySpread one)
    {
        AxisUnit unit = UnitOf(one);
        return
        [
            .. Bins(one)
                .Where(bin => bin.Share > 0)
                .Select(bin => (string[])[Number(bin.From / unit.Si), Number(bin.To / unit.Si), Number(bin.Share * 100)]),
        ];
    }

    private static AxisUnit UnitOf(QuantitySpread one) => AxisUnit.For(one.Unit, [one.HistogramLow, one.HistogramHigh]);

    private static void Limits(PlotSheet sheet, QuantitySpread one, AxisUnit unit)
    {
        if (one.Target is { } target)
        {
            sheet.Upright(target.Low / unit.Si, "target's lower limit", atEnd: true);
            sheet.Upright(target.High / unit.Si, "target's upper limit", atEnd: false);
        }
    }

    private static IEnumerable<(double From, double To, double Share)> Bins(QuantitySpread one)
    {
        double step = (one.HistogramHigh - one.HistogramLow) / one.Histogram.Count,
            all = Math.Max(1, one.Histogram.Sum());
        return one.Histogram.Select((count, at) => (one.HistogramLow + at * step, one.HistogramLow + (at + 1) * step, count / all));
    }

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
