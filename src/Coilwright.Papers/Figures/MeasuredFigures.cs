using System.Globalization;
using Coilwright.Analysis.Curves;

namespace Coilwright.Papers.Figures;

/// <summary>What was measured, drawn beside what follows from it.</summary>
public static class MeasuredFigures
{
    /// <summary>Points that have room for a dot each.</summary>
    private const int MostDots = 120;

    /// <summary>A curve as read, and the fit over it.</summary>
    /// <param name="read">Frequency in Hz and what was read: kΩ or dB.</param>
    /// <param name="fitted">The same as the fit says it.</param>
    /// <param name="label">Quantity and unit up the page.</param>
    public static string Curve(IReadOnlyList<(double Hz, double Value)> read, IReadOnlyList<(double Hz, double Value)> fitted, string label)
    {
        PlotSheet sheet = new(
            "measured-curve",
            PlotAxis.Audio,
            PlotAxis.Round(read.Concat(fitted).Select(one => one.Value), label, withZero: false)
        );
        sheet.Run(read, dots: read.Count <= MostDots);
        sheet.Curve("", fitted, index: 1);
        (double hz, double value) = fitted.MaxBy(one => one.Value);
        bool rightHalf = hz > 600;
        sheet.Label(hz, value, "fitted", (rightHalf ? -14 : 14, 18), rightHalf ? "end" : "start");
        sheet.Label(read[0].Hz, read[0].Value, "read", (8, -10), "start", copper: true);
        return sheet.Svg("measured", "The curve and its fit", "As read, and as the fitted parts give it; the numbers stand above.");
    }

    /// <summary>Resonances against the capacitor added, and the line that inductance and own capacitance give.</summary>
    /// <param name="readings">Capacitor in F and resonance in Hz.</param>
    /// <param name="henry">Inductance.</param>
    /// <param name="farad">Own capacitance.</param>
    public static string Resonances(IReadOnlyList<(double AddedF, double Hz)> readings, double henry, double farad)
    {
        double most = readings.Max(one => one.AddedF);
        (double X, double Y)[] line =
        [
            .. Enumerable
                .Range(0, 121)
                .Select(i => most * 1.05 * i / 120)
                .Select(added => (added * 1e12, AddedCapacitors.ResonanceHz(henry, farad + added) / 1e3)),
        ];
        PlotSheet sheet = new(
            "resonances",
            PlotAxis.Round(line.Select(one => one.X), "Capacitor added, pF"),
            PlotAxis.Round([.. line.Select(one => one.Y), .. readings.Select(one => one.Hz / 1e3)], "Resonance, kHz")
        );
        sheet.Curve("", line, index: 1);
        foreach ((double addedF, double hz) in readings)
        {
            sheet.Dot(addedF * 1e12, hz / 1e3);
            bool last = addedF > 0.8 * most;
            string words = string.Create(CultureInfo.InvariantCulture, $"{hz / 1e3:0.###} kHz");
            sheet.Label(addedF * 1e12, hz / 1e3, words, (last ? -10 : 12, -8), last ? "end" : "start", copper: true);
        }

        return sheet.Svg("resonances", "Resonance against the capacitor added", "Dots as read; the line is what was worked out.");
    }

    /// <summary>Readings of a gauge study, a place along the page for each part and a shape for each person.</summary>
    /// <param name="readings">Place of the part from 1, place of the person from 0, what was read, and who read it.</param>
    /// <param name="unit">Unit of the readings; empty for none.</param>
    /// <param name="reference">What they should read; null for nothing.</param>
    public static string Gauge(IReadOnlyList<(int Part, int Person, double Value, string Name)> readings, string unit, double? reference)
    {
        int parts = readings.Max(one => one.Part);
        double[] values = [.. readings.Select(one => one.Value), .. reference is { } wanted ? [wanted] : Array.Empty<double>()];
        double step = Math.Max(1, Math.Ceiling(parts / 12.0));
        PlotSheet sheet = new(
            "gauge",
            new PlotAxis(0.5, parts + 0.7, "Part, in the order of the table", [.. Steps(parts, step)]),
            PlotAxis.Round(values, unit.Length > 0 ? $"Reading, {unit}" : "Reading", withZero: false)
        );
        if (reference is { } line)
        {
            sheet.Line(line, "reference", "6 4");
        }

        foreach ((int part, int person, double value, string name) in readings)
        {
            double beside = part + 0.12 * (person % 5);
            sheet.Signal(
                beside,
                value,
                person % 5,
                "",
                string.Create(CultureInfo.InvariantCulture, $"{name}: {value:0.######}"),
                small: true
            );
        }

        return sheet.Svg("gauge", "Readings of the study", "A shape for each person; the numbers stand above.");
    }

    /// <summary>How often a lot is accepted, by the part of it that is defective.</summary>
    /// <param name="curve">Part defective and probability, both from 0 to 1.</param>
    /// <param name="marks">Lots that the page tells of.</param>
    public static string Acceptance(IReadOnlyList<(double Defective, double Accepted)> curve, IReadOnlyList<(double X, double Y)> marks)
    {
        PlotSheet sheet = new(
            "acceptance",
            PlotAxis.Round(curve.Select(one => 100 * one.Defective), "Defective in the lot, %"),
            new PlotAxis(0, 100, "Lots accepted, of 100", [0, 20, 40, 60, 80, 100])
        );
        sheet.Curve("", [.. curve.Select(one => (100 * one.Defective, 100 * one.Accepted))]);
        foreach ((double x, double y) in marks)
        {
            sheet.Dot(100 * x, 100 * y);
            string words = string.Create(CultureInfo.InvariantCulture, $"{100 * x:0.##} %: {100 * y:0.#} of 100");
            sheet.Label(100 * x, 100 * y, words, (12, y > 0.5 ? 18 : -8), "start", copper: true);
        }

        return sheet.Svg("acceptance", "How often a lot is accepted", "The sentence above tells the two marked lots.");
    }

    private static IEnumerable<double> Steps(int last, double step)
    {
        for (double at = 1; at <= last; at += step)
        {
            yield return at;
        }
    }
}
