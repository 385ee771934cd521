using System.Globalization;
using Coilwright.Physics.Winding;

namespace Coilwright.Papers.Figures;

/// <summary>
/// Wire speed over one turn of the spindle: where a long narrow core snatches and where it lets the wire go slack.
/// </summary>
public static class PulseFigure
{
    /// <summary>The figure as an SVG element; first turn solid, last turn dashed, each named where it runs.</summary>
    /// <param name="bobbin">The core.</param>
    /// <param name="buildM">How far out the last turn lies, m.</param>
    public static string Svg(Bobbin bobbin, double buildM)
    {
        (double X, double Y)[] first = Turn(bobbin, 0),
            last = Turn(bobbin, buildM);
        PlotSheet sheet = new(
            "pulse",
            new PlotAxis(0, 360, "Angle of the spindle, °", [0, 90, 180, 270, 360]),
            PlotAxis.Round(first.Concat(last).Select(point => point.Y), "Speed over mean, times"),
            height: 160
        );
        sheet.Curve("first turn", first);
        sheet.Curve("last turn", last, 1);
        return sheet.Svg("pulse", "Wire speed over one turn", Words(bobbin, buildM, null));
    }

    /// <summary>What the figure shows, in words.</summary>
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

    private static (double X, double Y)[] Turn(Bobbin bobbin, double distanceM) =>
        [
            .. Enumerable
                .Range(0, 121)
                .Select(at => at * 3.0)
                .Select(degree => (degree, WireSpeed.OverMean(bobbin, distanceM, degree * Math.PI / 180))),
        ];
}
