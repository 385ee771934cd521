using System.Globalization;
using Coilwright.Workshop.ControlCharts;

namespace Coilwright.Papers.Figures;

/// <summary>One chart of a run of coils: the run, its middle and limits, and every signal by shape and letter.</summary>
public static class ControlChartFigure
{
    /// <summary>Above this many points only the highest and lowest of neighbours are drawn; signals are drawn all.</summary>
    private const int MostPoints = 1200,
        MostDots = 250,
        MostLetters = 40;

    /// <summary>The chart as an SVG element that names itself to a screen reader.</summary>
    /// <param name="wall">The wall it hangs on.</param>
    /// <param name="chart">Which of its charts.</param>
    /// <param name="unit">Unit that values are divided by and written in, for example 1000 and "kΩ".</param>
    public static string Svg(ControlChart wall, ChartSeries chart, (double Si, string Name) unit)
    {
        (double scale, string name) = chart.InSigma ? (1, "sigma") : unit;
        PlotAxis y = PlotAxis.Round(
            Ends(wall, chart).Select(value => value / scale),
            $"{Capital(chart.Name)}{(name.Length > 0 ? ", " + name : "")}",
            withZero: false
        );
        PlotAxis x = PlotAxis.Round([1, wall.Points.Count], "Coil, number in order of entry", withZero: false);
        PlotSheet sheet = new("wall-" + chart.Name.Replace(' ', '-'), x, y);
        Limits(sheet, wall, chart, scale, y);
        foreach (IReadOnlyList<double> values in new[] { chart.Values, chart.Second }.OfType<IReadOnlyList<double>>())
        {
            (double, double)[] points = [.. values.Select((value, point) => (chart.Places[point] + 1.0, value / scale))];
            sheet.Run(Thinned(points), points.Length <= MostDots);
        }

        Marks(sheet, wall, chart, scale);
        int marked = wall.Signals.Where(signal => signal.Chart == chart.Name).Select(signal => signal.Index).Distinct().Count(),
            signals = wall.SignalRuns().Count(spell => spell.Chart == chart.Name);
        string told = string.Create(
            CultureInfo.InvariantCulture,
            $"{chart.Values.Count:#,##0} points, {marked:#,##0} of them marked, in {signals:#,##0} signals: a signal is an unbroken run "
                + $"of points that one rule marks. The tables below name them."
        );
        return sheet.Svg("wall", Capital(chart.Name), told);
    }

    private static void Limits(PlotSheet sheet, ControlChart wall, ChartSeries chart, double scale, PlotAxis y)
    {
        sheet.Line(chart.Centre / scale, "middle", "");
        if (Math.Abs(chart.High[0] - chart.High[^1]) < 1e-12 * Math.Abs(chart.High[^1]))
        {
            sheet.Line(chart.High[^1] / scale, "upper limit", "6 4");
            if (chart.Low[^1] / scale > y.Low)
            {
                sheet.Line(chart.Low[^1] / scale, "lower limit", "6 4");
            }
        }
        else
        {
            sheet.Curve("upper limit", Thinned([.. chart.High.Select((value, point) => (chart.Places[point] + 1.0, value / scale))]), 3);
            sheet.Curve("lower limit", Thinned([.. chart.Low.Select((value, point) => (chart.Places[point] + 1.0, value / scale))]), 3);
        }

        if (ShowsBand(wall, chart))
        {
            sheet.Line(wall.Band!.Low / scale, "recipe's lower limit", "1 4", wordsAtLeft: true);
            sheet.Line(wall.Band.High / scale, "recipe's upper limit", "1 4", wordsAtLeft: true);
        }
    }

    private static void Marks(PlotSheet sheet, ControlChart wall, ChartSeries chart, double scale)
    {
        Dictionary<int, int> pointOf = chart
            .Places.Select((place, point) => (place, point))
            .ToDictionary(one => one.place, one => one.point);
        SignalRun[] spells = [.. wall.SignalRuns().Where(spell => spell.Chart == chart.Name)];
        HashSet<(string, int)> begins = [.. spells.Select(spell => (spell.Rule, spell.First.Index))],
            lettered = Lettered(wall, spells);
        foreach (ChartSignal signal in wall.Signals.Where(signal => signal.Chart == chart.Name))
        {
            int point = pointOf[signal.Index];
            double value =
                chart.Second is { } second && Math.Abs(second[point]) > Math.Abs(chart.Values[point]) ? second[point] : chart.Values[point];
            string letter = wall.LetterOf(chart.Name, signal.Rule);
            sheet.Signal(
                signal.Index + 1,
                value / scale,
                (letter.Length == 0 ? 0 : letter[0] - 'A') % 4,
                lettered.Contains((signal.Rule, signal.Index)) ? letter : "",
                $"{signal.Tag}: {signal.Rule}",
                small: !begins.Contains((signal.Rule, signal.Index))
            );
        }

        foreach (
            (ChartedCoil point, int place) in chart.Name == ControlChart.Individuals
                ? wall.Points.Select((point, place) => (point, place)).Where(one => one.point.LeftOut)
                : []
        )
        {
            sheet.Signal(place + 1, point.Value / scale, 4, "", $"{point.Tag}: rejected or in doubt, left out");
        }
    }

    /// <summary>Beginnings of runs that have room for their letter; the others show it on pointing at them.</summary>
    private static HashSet<(string, int)> Lettered(ControlChart wall, IEnumerable<SignalRun> spells)
    {
        HashSet<(string, int)> lettered = [];
        double apart = (double)wall.Points.Count / MostLetters,
            last = double.NegativeInfinity;
        foreach (SignalRun spell in spells)
        {
            if (spell.First.Index >= last + apart)
            {
                lettered.Add((spell.Rule, spell.First.Index));
                last = spell.First.Index;
            }
        }

        return lettered;
    }

    private static IEnumerable<double> Ends(ControlChart wall, ChartSeries chart)
    {
        IEnumerable<double> ends = chart
            .Values.Concat(chart.Second ?? [])
            .Concat(chart.High)
            .Concat(chart.Name == ControlChart.MovingRanges ? [0] : chart.Low);
        return ShowsBand(wall, chart) ? ends.Concat([wall.Band!.Low, wall.Band.High]) : ends;
    }

    /// <summary>Limits of the recipe hold for single coils, and are left out where they would squeeze the chart flat.</summary>
    private static bool ShowsBand(ControlChart wall, ChartSeries chart) =>
        chart.Name == ControlChart.Individuals
        && wall.Band is { IsTarget: true } band
        && band.High - band.Low < 8 * (chart.High[^1] - chart.Low[^1]);

    private static (double X, double Y)[] Thinned((double X, double Y)[] points)
    {
        if (points.Length <= MostPoints)
        {
            return points;
        }

        int size = (int)Math.Ceiling(2.0 * points.Length / MostPoints);
        return
        [
            .. points
                .Chunk(size)
                .SelectMany(chunk => new[] { chunk.MinBy(point => point.Y), chunk.MaxBy(point => point.Y) }.OrderBy(point => point.X)),
        ];
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
