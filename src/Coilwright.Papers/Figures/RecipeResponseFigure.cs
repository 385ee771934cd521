using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Figures;

/// <summary>The response of one recipe with its 95 % band, and of the revision that it is compared with.</summary>
public static class RecipeResponseFigure
{
    /// <summary>No deeper than this below the peak: a curve dives for ever.</summary>
    private const double DeepestDb = 30;

    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="now">The response.</param>
    /// <param name="peak">Its peak; null without one.</param>
    /// <param name="band">Its band; null for none.</param>
    /// <param name="before">Name and response of what it is compared with; null for nothing.</param>
    public static string Svg(Response now, ResonanceForecast? peak, ResponseBand? band, (string Name, Response Response)? before)
    {
        double[] gains =
        [
            .. now.Points.Concat(before?.Response.Points ?? []).Select(point => point.GainDb),
            .. band?.HighDb ?? [],
            .. peak is { } top ? new[] { top.Gain.Value } : [],
        ];
        double high = gains.Max() + 3,
            deepest = high - DeepestDb;
        PlotSheet sheet = new(
            "recipe-response",
            PlotAxis.Audio,
            PlotAxis.Round([high, Math.Max(gains.Min(), deepest)], "Gain over 20 Hz, dB")
        );
        if (band is not null)
        {
            sheet.Band([.. band.FrequencyHz.Select((hz, i) => (hz, band.LowDb[i], band.HighDb[i]))]);
        }

        if (before is { } other)
        {
            sheet.Curve("", Points(other.Response), 1);
        }

        sheet.Curve("", Points(now));
        Name(sheet, now, peak, before, deepest);
        return sheet.Svg("response", "Response", Describe(peak, before?.Name));
    }

    /// <summary>The part of the drawing's width that is the plot, from 20 Hz at its left to 20 kHz at its right.</summary>
    public static (double From, double To) Across => PlotSheet.Across;

    private static (double X, double Y)[] Points(Response response) =>
        [.. response.Points.Select(point => (point.FrequencyHz, point.GainDb))];

    /// <summary>Words at the curves themselves: the one before where it is on its way down.</summary>
    private static void Name(
        PlotSheet sheet,
        Response now,
        ResonanceForecast? peak,
        (string Name, Response Response)? before,
        double deepest
    )
    {
        if (peak is { } top)
        {
            double hz = top.Frequency.Value;
            string words = string.Create(
                CultureInfo.InvariantCulture,
                $"now: {FigureFormatter.Value(hz, "Hz")}, {FigureFormatter.Value(top.Gain.Value, "dB")}"
            );
            sheet.Dot(hz, top.Gain.Value);
            sheet.Label(hz, top.Gain.Value, words, (-12, -6), "end", copper: true);
        }

        if (before is { } other)
        {
            (double Hz, double Db) last = Points(now)
                .Zip(Points(other.Response), (a, b) => (a.X, Math.Max(a.Y, b.Y)))
                .LastOrDefault(point => point.Item2 > deepest / 2);
            sheet.Label(last.Hz, last.Db, other.Name, (8, 0), last.Hz > 9000 ? "end" : "start");
        }
    }

    private static string Describe(ResonanceForecast? peak, string? before)
    {
        string now = peak is { } top
            ? $"peak {FigureFormatter.WithInterval(top.Frequency)}, {FigureFormatter.WithInterval(top.Gain)}"
            : "no peak";
        return $"Gain in dB relative to 20 Hz against frequency from 20 Hz to 20 kHz: {now}."
            + (before is null ? "" : $" Dashed: {before}.");
    }
}
