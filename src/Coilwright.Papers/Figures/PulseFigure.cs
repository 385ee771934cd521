using System.Globalization;
using System.Text;
using Coilwright.Physics.Winding;

namespace Coilwright.Papers.Figures;

/// <summary>
/// Strip of wire speed over one turn of the spindle: where a long narrow core snatches and where it lets the wire go slack.
/// </summary>
public static class PulseFigure
{
    private const int Width = 720,
        Height = 180,
        Left = 60,
        Right = 12,
        Top = 16,
        Bottom = 44;

    /// <summary>The strip as an SVG element; first turn solid, last turn dashed.</summary>
    /// <param name="bobbin">The core.</param>
    /// <param name="buildM">How far out the last turn lies, m.</param>
    public static string Svg(Bobbin bobbin, double buildM)
    {
        double most = Enumerable.Range(0, 361).Max(degree => WireSpeed.OverMean(bobbin, 0, degree * Math.PI / 180)) * 1.05;
        StringBuilder svg = new();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"pulse\" viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-label=\"Wire "
                + $"speed over its mean, by angle of the spindle: first turn and last turn\" font-size=\"14\" fill=\"currentColor\">"
        );
        foreach (int degree in (int[])[0, 90, 180, 270, 360])
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<line x1=\"{X(degree):0.#}\" x2=\"{X(degree):0.#}\" y1=\"{Top}\" y2=\"{Height - Bottom}\" stroke=\"currentColor\" "
                    + $"stroke-opacity=\".3\"/><text x=\"{X(degree):0.#}\" y=\"{Height - Bottom + 18}\" "
                    + $"text-anchor=\"{(degree == 360 ? "end" : "middle")}\">{degree}°</text>"
            );
        }

        foreach (double level in (double[])[0, 1])
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<line x1=\"{Left}\" x2=\"{Width - Right}\" y1=\"{Y(level, most):0.#}\" y2=\"{Y(level, most):0.#}\" "
                    + $"stroke=\"currentColor\" stroke-opacity=\".3\"/><text x=\"{Left - 8}\" y=\"{Y(level, most) + 5:0.#}\" "
                    + $"text-anchor=\"end\">{(level > 0 ? "mean" : "0")}</text>"
            );
        }

        Curve(svg, bobbin, 0, most, "");
        Curve(svg, bobbin, buildM, most, " stroke-dasharray=\"6 4\"");
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<text x=\"{(Left + Width - Right) / 2}\" y=\"{Height - 6}\" text-anchor=\"middle\">angle of the spindle; wire speed over "
                + $"its mean: first turn solid, last dashed</text></svg>"
        );
        return svg.ToString();
    }

    /// <summary>What the strip shows, in words.</summary>
    /// <param name="bobbin">The core.</param>
    /// <param name="buildM">How far out the last turn lies, m.</param>
    /// <param name="speedRpm">Spindle speed, or null.</param>
    public static string Words(Bobbin bobbin, double buildM, double? speedRpm)
    {
        string often = speedRpm is { } rpm
            ? string.Create(CultureInfo.InvariantCulture, $", {rpm / 30:0} times a second at {rpm:#,##0} rpm")
            : ", twice a turn";
        string fastest = speedRpm is { } at
            ? string.Create(
                CultureInfo.InvariantCulture,
                $" The wire runs at up to {WireSpeed.LeverM(bobbin, buildM, 0) * at * 2 * Math.PI / 60:0.0} m/s."
            )
            : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Wire speed changes {WireSpeed.Ratio(bobbin, 0):0.0} to 1 on the first turn and {WireSpeed.Ratio(bobbin, buildM):0.0} to 1 "
                + $"on the last{often}: tension pulses with it unless the tensioner gives.{fastest}"
        );
    }

    private static void Curve(StringBuilder svg, Bobbin bobbin, double distanceM, double most, string dash)
    {
        svg.Append("<polyline fill=\"none\" stroke=\"#9a4a1a\" stroke-width=\"2.5\"").Append(dash).Append(" points=\"");
        for (int degree = 0; degree <= 360; degree += 3)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"{X(degree):0.#},{Y(WireSpeed.OverMean(bobbin, distanceM, degree * Math.PI / 180), most):0.#} "
            );
        }

        svg.Append("\"/>");
    }

    private static double X(double degree) => Left + (Width - Left - Right) * degree / 360;

    private static double Y(double value, double most) => Height - Bottom - (Height - Bottom - Top) * value / most;
}
