using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Papers.Figures;

/// <summary>What the strings meet and what is heard of them, and the coil's series branch, as plots.</summary>
public static class StringFigures
{
    private const string Across = "Across the strings, mm";

    /// <summary>Vertical flux density across the strings at their height, with each string's own value and its interval.</summary>
    public static string Field(PickupPictures pictures, IReadOnlyList<StringForecast> strings, IReadOnlyList<double> stringsXM)
    {
        PlotSheet sheet = new(
            "string-field",
            MillimetresOf(pictures.Fields.SelectMany(line => line.Points.Select(point => point.XM))),
            PlotAxis.Round(
                [.. pictures.Fields.SelectMany(line => line.Points.Select(point => point.T * 1e3)), .. strings.SelectMany(Ends)],
                "Vertical flux density, mT"
            )
        );
        for (int i = 0; i < pictures.Fields.Count; i++)
        {
            FieldLine line = pictures.Fields[i];
            sheet.Curve(
                string.Create(CultureInfo.InvariantCulture, $"row at y = {line.YM * 1e3:0.#} mm, {line.HeightM * 1e3:0.0} mm up"),
                [.. line.Points.Select(point => (point.XM * 1e3, point.T * 1e3))],
                i
            );
        }

        foreach ((StringForecast one, double xM) in strings.Zip(stringsXM))
        {
            sheet.Mark(
                xM * 1e3,
                one.Field.Value * 1e3,
                one.Field.Estimate.Low * 1e3,
                one.Field.Estimate.High * 1e3,
                one.Number.ToString(CultureInfo.InvariantCulture)
            );
        }

        return sheet.Svg(
            "string-field",
            "Field at the strings",
            "Vertical flux density of the magnets against the place across the strings. "
                + string.Join(
                    "; ",
                    strings.Select(one =>
                        string.Create(CultureInfo.InvariantCulture, $"string {one.Number} {one.Field.Value * 1e3:0.0} mT")
                    )
                )
                + "."
        );

        static IEnumerable<double> Ends(StringForecast one) => [one.Field.Estimate.Low * 1e3, one.Field.Estimate.High * 1e3];
    }

    /// <summary>Output of each string as bars with their intervals, and what the middle string would give anywhere across.</summary>
    public static string Output(PickupPictures pictures, IReadOnlyList<StringForecast> strings, IReadOnlyList<double> stringsXM)
    {
        PlotSheet sheet = new(
            "string-output",
            MillimetresOf(pictures.Across.Select(point => point.XM)),
            PlotAxis.Round(
                [
                    .. pictures.Across.Select(point => point.VoltSPerM * 1e3),
                    .. strings.SelectMany(one => new[] { one.Sensitivity.Estimate.Low * 1e3, one.Sensitivity.Estimate.High * 1e3 }),
                ],
                "Output, mV per m/s"
            )
        );
        double width = stringsXM.Count > 1 ? 400 * Math.Abs(stringsXM[1] - stringsXM[0]) : 4;
        foreach ((StringForecast one, double xM) in strings.Zip(stringsXM))
        {
            Estimate output = one.Sensitivity.Estimate;
            sheet.Bar(xM * 1e3, output.Value * 1e3, width);
            sheet.Mark(
                xM * 1e3,
                output.Value * 1e3,
                output.Low * 1e3,
                output.High * 1e3,
                one.Number.ToString(CultureInfo.InvariantCulture)
            );
        }

        sheet.Curve(
            $"string {strings.Count / 2 + 1} if it stood there",
            [.. pictures.Across.Select(point => (point.XM * 1e3, point.VoltSPerM * 1e3))],
            1
        );
        return sheet.Svg(
            "string-output",
            "Output of the strings",
            "Output for a metre a second of vertical motion. "
                + string.Join(
                    "; ",
                    strings.Select(one =>
                        string.Create(CultureInfo.InvariantCulture, $"string {one.Number} {one.Sensitivity.Value * 1e3:0.0} mV per m/s")
                    )
                )
                + "."
        );
    }

    /// <summary>What the pickup hears along the middle string.</summary>
    public static string Aperture(PickupPictures pictures)
    {
        PlotSheet sheet = new(
            "string-aperture",
            PlotAxis.Round(pictures.Along.Select(point => point.YM * 1e3), "Along the string, mm", withZero: false),
            PlotAxis.Round(pictures.Along.Select(point => point.SharePerM / 10), "Share of the output, % per mm")
        );
        sheet.Curve("", [.. pictures.Along.Select(point => (point.YM * 1e3, point.SharePerM / 10))]);
        (double yM, double share) = pictures.Along.MaxBy(point => point.SharePerM);
        return sheet.Svg(
            "string-aperture",
            "What is heard along the string",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Share of the output by place along the string; most, {share / 10:0.0} % per mm, at {yM * 1e3:0.0} mm."
            )
        );
    }

    /// <summary>Series inductance against frequency, with the intervals at the forecast frequencies.</summary>
    public static string Inductance(PickupPictures pictures, IReadOnlyList<SpectrumForecast> spectrum) =>
        Branch(
            "inductance",
            "Inductance",
            "Series inductance, H",
            pictures.Branch.Select(point => (point.FrequencyHz, point.InductanceH)),
            [.. spectrum.Select(line => (line.FrequencyHz, line.Inductance.Estimate))],
            1
        );

    /// <summary>AC resistance against frequency, with the intervals at the forecast frequencies.</summary>
    public static string Resistance(PickupPictures pictures, IReadOnlyList<SpectrumForecast> spectrum) =>
        Branch(
            "ac-resistance",
            "AC resistance",
            "AC resistance, kΩ",
            pictures.Branch.Select(point => (point.FrequencyHz, point.ResistanceOhm)),
            [.. spectrum.Select(line => (line.FrequencyHz, line.Resistance.Estimate))],
            1e-3
        );

    private static string Branch(
        string id,
        string title,
        string axis,
        IEnumerable<(double Hz, double Value)> curve,
        (double Hz, Estimate Value)[] marks,
        double times
    )
    {
        (double Hz, double Value)[] points = [.. curve.Select(point => (point.Hz, point.Value * times))];
        PlotSheet sheet = new(
            id,
            PlotAxis.Audio,
            PlotAxis.Round(
                [
                    .. points.Select(point => point.Value),
                    .. marks.SelectMany(mark => new[] { mark.Value.Low * times, mark.Value.High * times }),
                ],
                axis
            )
        );
        sheet.Curve("", points);
        foreach ((double hz, Estimate value) in marks)
        {
            sheet.Mark(hz, value.Value * times, value.Low * times, value.High * times, "");
        }

        return sheet.Svg(
            id,
            title + " against frequency",
            title
                + " of the cores and the winding without its capacitance, 20 Hz to 20 kHz. "
                + string.Join(
                    "; ",
                    marks.Select(mark => string.Create(CultureInfo.InvariantCulture, $"{mark.Hz:0} Hz {mark.Value.Value * times:0.###}"))
                )
                + "."
        );
    }

    private static PlotAxis MillimetresOf(IEnumerable<double> xM)
    {
        double half = xM.DefaultIfEmpty(0.03).Max(Math.Abs) * 1e3;
        return new PlotAxis(
            -half,
            half,
            Across,
            [.. Enumerable.Range(-10, 21).Select(i => i * 10.0).Where(tick => Math.Abs(tick) <= half)]
        );
    }
}
