using System.Globalization;
using System.Text;
using Coilwright.Papers.Formatting;

namespace Coilwright.Papers.Figures;

/// <summary>A trade-off of two quantities: one dot a recipe, named on pointing at it.</summary>
public static class TradeOffFigure
{
    private const double Left = 110,
        Right = 700,
        Top = 16,
        Bottom = 320;

    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="points">The recipes.</param>
    /// <param name="first">Name and SI unit of the quantity along the page.</param>
    /// <param name="second">Name and SI unit of the quantity up the page.</param>
    public static string Svg(IReadOnlyList<TradeOffDot> points, (string Name, string Unit) first, (string Name, string Unit) second)
    {
        (double lowX, double highX) = Ends(points.Select(point => point.First));
        (double lowY, double highY) = Ends(points.Select(point => point.Second));
        StringBuilder svg = new();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<svg xmlns="http://www.w3.org/2000/svg" class="figure" """
                + $"""role="{(points.Any(point => point.Link.Length > 0) ? "group" : "img")}" viewBox="0 0 720 370" """
                + $"""font-family="system-ui, sans-serif" font-size="12"><title>Trade-off</title><desc>{points.Count} recipes, """
                + $"""{Markup.E(second.Name)} against {Markup.E(first.Name)}; the table below has the numbers.</desc>"""
        );
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<path d="M{Left} {Top}V{Bottom}H{Right}" fill="none" stroke="currentColor"/><text x="{(Left + Right) / 2}" y="360" """
                + $"""text-anchor="middle" fill="currentColor">{Markup.E(first.Name)}</text><text x="18" y="{(Top + Bottom) / 2}" """
                + $"""text-anchor="middle" fill="currentColor" transform="rotate(-90 18 """
                + $"""{(Top + Bottom) / 2})">{Markup.E(second.Name)}</text>"""
        );
        foreach (TradeOffDot dot in points)
        {
            Append(
                svg,
                dot,
                Left + (dot.First - lowX) / (highX - lowX) * (Right - Left),
                Bottom - (dot.Second - lowY) / (highY - lowY) * (Bottom - Top)
            );
        }

        foreach (
            (double x, double y, string anchor, double value, string unit) in new[]
            {
                (Left, Bottom + 18, "start", lowX, first.Unit),
                (Right, Bottom + 18, "end", highX, first.Unit),
                (Left - 6, Bottom, "end", lowY, second.Unit),
                (Left - 6, Top + 10, "end", highY, second.Unit),
            }
        )
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<text x="{x}" y="{y}" text-anchor="{anchor}" """
                    + $"""fill="currentColor">{Markup.E(FigureFormatter.Value(value, unit))}</text>"""
            );
        }

        return svg.Append("</svg>").ToString();
    }

    /// <summary>A dot, or a ring with its number for one that is marked; with a link it has room for a finger.</summary>
    private static void Append(StringBuilder svg, TradeOffDot dot, double px, double py)
    {
        if (dot.Link.Length > 0)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<a href="{Markup.E(dot.Link)}" aria-label="{Markup.E(dot.LinkWords)}"><circle cx="{px:0.#}" cy="{py:0.#}" """
                    + $"""r="11" fill="transparent"/>"""
            );
        }

        svg.Append(
            dot.Mark.Length == 0
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"""<circle cx="{px:0.#}" cy="{py:0.#}" r="4" fill="var(--copper, """
                        + $"""#a8552a)"><title>{Markup.E(dot.Words)}</title></circle>"""
                )
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"""<circle cx="{px:0.#}" cy="{py:0.#}" r="8" fill="none" stroke="currentColor" """
                        + $"""stroke-width="2.5"><title>{Markup.E(dot.Words)}</title></circle><text x="{px:0.#}" y="{py - 11:0.#}" """
                        + $"""text-anchor="middle" font-weight="700" fill="currentColor">{Markup.E(dot.Mark)}</text>"""
                )
        );
        svg.Append(dot.Link.Length > 0 ? "</a>" : "");
    }

    /// <summary>Ends of an axis, a little apart even where all values are one.</summary>
    private static (double Low, double High) Ends(IEnumerable<double> values)
    {
        double[] all = [.. values];
        double low = all.Min(),
            high = all.Max(),
            room = Math.Max(0.04 * (high - low), 1e-6 * Math.Max(Math.Abs(low), 1e-9));
        return (low - room, high + room);
    }
}
