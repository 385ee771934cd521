using System.Text;
using Coilwright.Analysis.Spread;
using Coilwright.Papers.Formatting;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>How one quantity of a run scatters, small: bars over a scale with round ticks, limits as lines with their names.</summary>
public static class SpreadFigure
{
    private const int Width = 360,
        Height = 150,
        Left = 8,
        Right = 352,
        Top = 22,
        Bottom = 112,
        LimitWords = 76,
        DigitWidth = 9;

    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="spread">What is drawn.</param>
    /// <param name="title">Its name.</param>
    public static string Svg(QuantitySpread spread, string title)
    {
        DisplayScale scale = DisplayScale.For(spread.Unit, Math.Max(Math.Abs(spread.HistogramHigh), Math.Abs(spread.HistogramLow)));
        double[] ends =
        [
            spread.HistogramLow,
            spread.HistogramHigh,
            .. spread.Target is { } target ? [target.Low, target.High] : Array.Empty<double>(),
        ];
        PlotAxis axis = PlotAxis.Round(ends.Select(end => end * scale.PerSi), scale.Unit, withZero: false);
        StringBuilder svg = new();
        Write(
            svg,
            $"""<svg xmlns="http://www.w3.org/2000/svg" class="figure spread" role="img" aria-label="{E(title)}" """
                + $"""viewBox="0 0 {Width} {Height}" font-family="system-ui, sans-serif" font-size="14" fill="var(--ink, #1d1a16)">"""
        );
        DrawBars(svg, spread, axis, scale);
        DrawAxis(svg, axis);
        if (spread.Target is { } limits)
        {
            Limit(svg, axis, limits.Low * scale.PerSi, "lower limit", "end");
            Limit(svg, axis, limits.High * scale.PerSi, "upper limit", "start");
        }

        return svg.Append("</svg>").ToString();
    }

    private static void DrawBars(StringBuilder svg, QuantitySpread spread, PlotAxis axis, DisplayScale scale)
    {
        double step = (spread.HistogramHigh - spread.HistogramLow) / spread.Histogram.Count,
            most = Math.Max(1, spread.Histogram.Max());
        for (int bin = 0; bin < spread.Histogram.Count; bin++)
        {
            double from = spread.HistogramLow + bin * step,
                height = (Bottom - Top - 4) * spread.Histogram[bin] / most;
            bool outside = spread.Target is { } target && (from + step / 2 < target.Low || from + step / 2 > target.High);
            string fill = outside ? "var(--reject, #a61b1b)" : "var(--soft, #545b66)";
            double x = X(axis, from * scale.PerSi),
                width = Math.Max(0.5, X(axis, (from + step) * scale.PerSi) - x - 0.6);
            Write(svg, $"""<rect x="{x:0.#}" y="{Bottom - height:0.#}" width="{width:0.#}" height="{height:0.#}" fill="{fill}"/>""");
        }
    }

    private static void DrawAxis(StringBuilder svg, PlotAxis axis)
    {
        Write(svg, $"""<path d="M{Left} {Bottom}H{Right}" stroke="var(--ink, #1d1a16)" fill="none"/>""");
        int every = axis.Ticks.Count > 6 || axis.Ticks.Max(tick => axis.Number(tick).Length) > 4 ? 2 : 1;
        foreach ((int place, double tick) in axis.Ticks.Index())
        {
            Write(svg, $"""<path d="M{X(axis, tick):0.#} {Bottom}v5" stroke="var(--ink, #1d1a16)" fill="none"/>""");
            if (place % every == 0)
            {
                Write(svg, $"""<text x="{Words(axis, tick):0.#}" y="{Bottom + 20}" text-anchor="middle">{axis.Number(tick)}</text>""");
            }
        }

        Write(svg, $"""<text x="{Right}" y="{Bottom + 36}" text-anchor="end">{E(axis.Label)}</text>""");
    }

    private static void Limit(StringBuilder svg, PlotAxis axis, double at, string words, string anchor)
    {
        double x = X(axis, at),
            shift = anchor == "start" ? Math.Min(x, Right - LimitWords) : Math.Max(x, Left + LimitWords);
        Write(
            svg,
            $"""<path d="M{x:0.#} {Top - 4}V{Bottom}" stroke="var(--reject, #a61b1b)" stroke-width="2" stroke-dasharray="5 3" """
                + $"""fill="none"/>"""
        );
        Write(svg, $"""<text x="{shift:0.#}" y="{Top - 8}" text-anchor="{anchor}">{words}</text>""");
    }

    private static double X(PlotAxis axis, double value) => Left + (Right - Left) * axis.Part(value);

    /// <summary>Where a number stands, so that it is not cut at the ends.</summary>
    private static double Words(PlotAxis axis, double tick)
    {
        double half = DigitWidth * axis.Number(tick).Length / 2;
        return Math.Clamp(X(axis, tick), Left + half, Right - half);
    }

    private static void Write(StringBuilder svg, InvariantText text) => svg.Append(text.ToText());
}
