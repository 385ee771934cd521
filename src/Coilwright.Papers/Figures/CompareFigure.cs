using Coilwright.Papers.Formatting;

namespace Coilwright.Papers.Figures;

/// <summary>Responses over each other, each with its name at its peak: ±12 dB, so that a decibel is seen.</summary>
public static class CompareFigure
{
    private const double UsualDb = 12,
        StepDb = 6;

    /// <summary>Between two lines of names, in the drawing.</summary>
    private const double LineStep = 17;

    /// <summary>How far left of its peak a name ends, in the drawing.</summary>
    private const double Aside = 22;

    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="frequenciesHz">Common frequencies.</param>
    /// <param name="traces">The curves.</param>
    public static string Svg(IReadOnlyList<double> frequenciesHz, IReadOnlyList<ComparedTrace> traces)
    {
        PlotSheet sheet = new("compare", PlotAxis.Audio, Gain(traces));
        foreach ((int place, ComparedTrace trace) in traces.Index())
        {
            sheet.Curve("", Points(frequenciesHz, trace), place);
        }

        Name(sheet, frequenciesHz, traces);
        string told = string.Join("; ", traces.Select(trace => $"{trace.Name}: {Words(trace)}"));
        return sheet.Svg("response", "Responses compared", $"Gain in dB relative to 20 Hz, 20 Hz to 20 kHz. {told}.");
    }

    /// <summary>The part of the drawing's width that is the plot.</summary>
    public static (double From, double To) Across => PlotSheet.Across;

    /// <summary>±12 dB, and further up by sixes where a peak is higher.</summary>
    private static PlotAxis Gain(IReadOnlyList<ComparedTrace> traces)
    {
        double highest = traces.SelectMany(trace => trace.GainDb).Max() ?? 0,
            top = Math.Max(UsualDb, StepDb * Math.Ceiling((highest + 1) / StepDb));
        int ticks = (int)((top + UsualDb) / StepDb) + 1;
        return new PlotAxis(-UsualDb, top, "Gain over 20 Hz, dB", [.. Enumerable.Range(0, ticks).Select(tick => -UsualDb + StepDb * tick)]);
    }

    private static IReadOnlyList<(double X, double Y)> Points(IReadOnlyList<double> hz, ComparedTrace trace) =>
        [.. hz.Zip(trace.GainDb).Where(point => point.Second is not null).Select(point => (point.First, point.Second!.Value))];

    /// <summary>Names beside the peaks, the highest on top, each on a line of its own with a thin line to its peak.</summary>
    private static void Name(PlotSheet sheet, IReadOnlyList<double> hz, IReadOnlyList<ComparedTrace> traces)
    {
        double free = double.NegativeInfinity;
        (ComparedTrace Trace, double X, double Y)[] places =
        [
            .. traces
                .Where(trace => trace.GainDb.Any(gain => gain is not null))
                .Select(trace => (Trace: trace, At: Place(hz, trace)))
                .OrderByDescending(one => one.At.Y)
                .Select(one => (one.Trace, one.At.X, one.At.Y)),
        ];
        foreach ((ComparedTrace trace, double x, double y) in places)
        {
            double at = sheet.FromTop(y),
                line = Math.Max(Math.Max(14, at - LineStep), free + LineStep);
            free = line;
            sheet.Leader(x, y, (-Aside + 4, line - at - 4));
            sheet.Dot(x, y);
            sheet.Label(x, y, trace.Peak is null ? trace.Name : $"{trace.Name}, {Words(trace)}", (-Aside, line - at), "end");
        }
    }

    /// <summary>The peak, or where the curve leaves the plot.</summary>
    private static (double X, double Y) Place(IReadOnlyList<double> hz, ComparedTrace trace) =>
        trace.Peak is { } peak
            ? (peak.FrequencyHz, peak.GainDb)
            : Points(hz, trace).Reverse().Append((PlotAxis.Audio.Low, 0)).First(point => point.Y > -UsualDb / 2);

    private static string Words(ComparedTrace trace) =>
        trace.Peak is { } peak ? $"{FigureFormatter.Value(peak.FrequencyHz, "Hz")}, {FigureFormatter.Value(peak.GainDb, "dB")}" : "no peak";
}
