using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.ControlCharts;

namespace Coilwright.Web.Views;

/// <summary>The wall of charts as the page and the table show it.</summary>
public static class ControlChartViewModel
{
    /// <summary>Charts that are in sight: single coils, or means, and the one on which the newest signal stands.</summary>
    public static IReadOnlyList<DrawingViewModel> InSight(ControlChart wall) =>
        [.. wall.Charts.Zip(Charts(wall)).Where((one, place) => place == 0 || one.First.Name == Newest(wall)).Select(one => one.Second)];

    /// <summary>The other charts.</summary>
    public static IReadOnlyList<DrawingViewModel> Folded(ControlChart wall) =>
        [.. wall.Charts.Zip(Charts(wall)).Where((one, place) => place != 0 && one.First.Name != Newest(wall)).Select(one => one.Second)];

    /// <summary>What the newest signal says: "the run has moved up by 45 Ω since".</summary>
    public static string Said(ControlChart wall, ChartAdvice advice) =>
        advice.Sense switch
        {
            SignalSense.OneCoil => $"One coil stands apart, {Off(wall, advice)} the centre line, at",
            SignalSense.Trend => "The run moves on from coil to coil, up to",
            SignalSense.Wider => "Coils lie further from each other than before, at",
            SignalSense.TwoStreams => "Coils take turns between two levels, up to",
            SignalSense.TooClose => "Coils lie closer to the middle than the limits expect, up to",
            _ => $"The run lies {Off(wall, advice)} the centre line, up to",
        };

    private static string Off(ControlChart wall, ChartAdvice advice) =>
        $"{Difference(wall, Math.Abs(advice.OffSi))} {(advice.OffSi < 0 ? "below" : "above")}";

    private static string Difference(ControlChart wall, double si) =>
        wall.Question.Quantity == QuantityKey.DcResistance ? string.Create(CultureInfo.InvariantCulture, $"{si:0} Ω") : Value(wall, si);

    private static string? Newest(ControlChart wall) => ChartAdvice.Of(wall)?.Run.Chart;

    /// <summary>The charts, each with its caption and its key numbers.</summary>
    public static IReadOnlyList<DrawingViewModel> Charts(ControlChart wall) =>
        [
            .. wall.Charts.Select(chart => new DrawingViewModel(Caption(wall, chart), ControlChartFigure.Svg(wall, chart, UnitOf(wall)))
            {
                Header = [Capital(chart.Name), "Value"],
                Rows =
                [
                    ["middle", Write(wall, chart, chart.Centre)],
                    ["lower limit", Write(wall, chart, chart.Low[^1])],
                    ["upper limit", Write(wall, chart, chart.High[^1])],
                    ["lowest point", Write(wall, chart, (chart.Second ?? chart.Values).Min())],
                    ["highest point", Write(wall, chart, chart.Values.Max())],
                    ["last point", Write(wall, chart, chart.Values[^1])],
                    ["points", chart.Values.Count.ToString("#,##0", CultureInfo.InvariantCulture)],
                ],
            }),
        ];

    /// <summary>A value of the charted quantity with its unit, four digits.</summary>
    public static string Value(ControlChart wall, double si)
    {
        (double scale, string unit) = UnitOf(wall);
        return string.Create(CultureInfo.InvariantCulture, $"{si / scale:G4} {unit}").TrimEnd();
    }

    /// <summary>A capability index, two decimals.</summary>
    public static string Index(double index) => index.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>Name of a charted quantity.</summary>
    public static string Name(string quantity) =>
        quantity switch
        {
            "inductance" => "Inductance",
            "q" => "Q",
            _ => "DC resistance at 20 °C",
        };

    /// <summary>The recipe's limits that capability is told against.</summary>
    public static string Limits(ControlChart wall) =>
        wall.Question.Sides switch
        {
            SpecificationSides.LowerOnly => $"at least {Value(wall, wall.Band!.Low)}",
            SpecificationSides.UpperOnly => $"at most {Value(wall, wall.Band!.High)}",
            _ => $"{Value(wall, wall.Band!.Low)} to {Value(wall, wall.Band.High)}",
        };

    private static (double Si, string Name) UnitOf(ControlChart wall) =>
        wall.Question.Quantity switch
        {
            QuantityKey.DcResistance => wall.Centre >= 1000 ? (1000, "kΩ") : (1, "Ω"),
            "inductance" => wall.Centre >= 1 ? (1, "H") : (1e-3, "mH"),
            _ => (1, ""),
        };

    private static string Caption(ControlChart wall, ChartSeries chart) =>
        Capital(chart.Name)
        + (
            chart.Name switch
            {
                ControlChart.Individuals => ". Whole line: middle; dashed: three sigma"
                    + (wall.Band is null ? "." : "; dotted: the recipe's limits. A cross is a coil outside them, left out."),
                ControlChart.MovingRanges => ": how far each coil lies from the one before.",
                ControlChart.Average => string.Create(
                    CultureInfo.InvariantCulture,
                    $" with weight {wall.Question.Lambda:0.###} on the newest coil; finds small shifts."
                ),
                ControlChart.Sums => string.Create(
                    CultureInfo.InvariantCulture,
                    $" of what coils exceed the middle by, up and down, less {wall.Question.Allowance:0.##} sigma; a sum beyond "
                        + $"{wall.Question.Decision:0.##} sigma signals."
                ),
                ControlChart.Means => string.Create(CultureInfo.InvariantCulture, $" of {wall.Question.Subgroup} coils."),
                _ => string.Create(
                    CultureInfo.InvariantCulture,
                    $": {(wall.Question.Spread == Analysis.Charts.SubgroupSpread.Range ? "range" : "standard deviation")} of "
                        + $"{wall.Question.Subgroup} coils."
                ),
            }
        )
        + " Letters name the rules listed below.";

    private static string Write(ControlChart wall, ChartSeries chart, double value) =>
        chart.InSigma ? string.Create(CultureInfo.InvariantCulture, $"{value:0.##} sigma") : Value(wall, value);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
