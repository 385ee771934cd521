using System.Globalization;
using System.Text;

namespace Coilwright.Papers.Figures;

/// <summary>A trade-off of two quantities: one dot a recipe, named on pointing at it.</summary>
public static class TradeOffFigure
{
    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="points">The recipes.</param>
    /// <param name="first">Name and SI unit of the quantity along the page.</param>
    /// <param name="second">Name and SI unit of the quantity up the page.</param>
    public static string Svg(IReadOnlyList<TradeOffDot> points, (string Name, string Unit) first, (string Name, string Unit) second)
    {
        AxisUnit along = AxisUnit.For(first.Unit, points.Select(point => point.First)),
            up = AxisUnit.For(second.Unit, points.Select(point => point.Second));
        PlotSheet sheet = new(
            "trade-off",
            PlotAxis.Round(points.Select(point => point.First / along.Si), along.Beside(first.Name), withZero: false),
            PlotAxis.Round(points.Select(point => point.Second / up.Si), up.Beside(second.Name), withZero: false),
            height: 300
        );
        foreach (TradeOffDot dot in points)
        {
            sheet.Drawn(dot.First / along.Si, dot.Second / up.Si, (x, y) => Drawing(dot, x, y));
        }

        return sheet.Svg(
            "trade-off",
            "Trade-off",
            $"{points.Count} recipes, {second.Name} against {first.Name}; the table below has the numbers.",
            points.Any(point => point.Link.Length > 0) ? "group" : "img"
        );
    }

    /// <summary>A dot, or a ring with its number for one that is marked; with a link it has room for a finger.</summary>
    private static string Drawing(TradeOffDot dot, double x, double y)
    {
        StringBuilder svg = new();
        if (dot.Link.Length > 0)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<a href="{Markup.E(dot.Link)}" aria-label="{Markup.E(dot.LinkWords)}"><circle cx="{x:0.#}" cy="{y:0.#}" """
                    + $"""r="11" fill="transparent"/>"""
            );
        }

        svg.Append(dot.Mark.Length == 0 ? Plain(dot, x, y) : Ring(dot, x, y));
        return svg.Append(dot.Link.Length > 0 ? "</a>" : "").ToString();
    }

    private static string Plain(TradeOffDot dot, double x, double y) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""<circle cx="{x:0.#}" cy="{y:0.#}" r="4" fill="var(--copper, #a8552a)"><title>{Markup.E(dot.Words)}</title></circle>"""
        );

    private static string Ring(TradeOffDot dot, double x, double y) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""<circle cx="{x:0.#}" cy="{y:0.#}" r="8" fill="none" stroke="var(--ink, #1d1a16)" """
                + $"""stroke-width="2.5"><title>{Markup.E(dot.Words)}</title></circle><text x="{x:0.#}" y="{y - 11:0.#}" """
                + $"""text-anchor="middle" font-weight="700" fill="var(--ink, #1d1a16)">{Markup.E(dot.Mark)}</text>"""
        );
}
