using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Web.Views.Forecasts;

/// <summary>The plots of a forecast with their captions, and each as a table.</summary>
internal static class StringPlots
{
    /// <summary>Field, output and aperture; nothing without strings or without pictures.</summary>
    public static IReadOnlyList<DrawingViewModel> OfStrings(PickupModel model, Prediction prediction)
    {
        IReadOnlyList<StringForecast> strings = prediction.Pickup.Strings;
        if (prediction.Pictures is not { } pictures || strings.Count == 0)
        {
            return [];
        }

        double[] xM = [.. strings.Select((_, i) => model.Strings!.XM(i))];
        return [OutputOf(pictures, strings, xM, model.Strings!.StringsAssumed), FieldOf(pictures, strings, xM), .. MotionOf(pictures)];
    }

    /// <summary>L(f) and R(f); nothing without pictures.</summary>
    public static IReadOnlyList<DrawingViewModel> OfBranch(Prediction prediction) =>
        prediction.Pictures is not { } pictures
            ? []
            :
            [
                BranchOf(
                    "Series inductance without self-capacitance, H, against frequency. Rings and whiskers: forecast with its 95 % "
                        + "interval.",
                    StringFigures.Inductance(pictures, prediction.Pickup.Spectrum),
                    "Inductance",
                    prediction.Pickup.Spectrum,
                    line => line.Inductance
                ),
                BranchOf(
                    "Resistance to alternating current, kΩ, against frequency: the winding's own and what cores and metalwork take. "
                        + "Rings and whiskers: forecast with its 95 % interval.",
                    StringFigures.Resistance(pictures, prediction.Pickup.Spectrum),
                    "AC resistance",
                    prediction.Pickup.Spectrum,
                    line => line.Resistance
                ),
            ];

    private static DrawingViewModel FieldOf(PickupPictures pictures, IReadOnlyList<StringForecast> strings, double[] xM) =>
        new(
            Ends(strings, one => one.Field)
                + "Vertical flux density of the magnets at the strings, mT, across the pickup. Numbered rings: the strings, each at its "
                + "own height, with their 95 % intervals, forecast.",
            StringFigures.Field(pictures, strings, xM)
        )
        {
            Title = "Field at the strings",
            Header = ["String", "Field", "95 % interval", "Basis"],
            Rows = [.. strings.Select(one => Row(one.Number, one.Field))],
        };

    private static DrawingViewModel OutputOf(PickupPictures pictures, IReadOnlyList<StringForecast> strings, double[] xM, bool assumed) =>
        new(
            Ends(strings, one => one.Sensitivity)
                + "Output of each string for a metre a second of vertical motion, mV, with its 95 % interval, forecast. Dashed: the middle "
                + "string moved across. The steel's share of the interval is the same for all strings, so they "
                + "compare within a few per cent."
                + (assumed ? " The strings are the usual ones of their number: assumed." : ""),
            StringFigures.Output(pictures, strings, xM)
        )
        {
            Title = "Output of the strings",
            Header = ["String", "Output", "95 % interval", "Basis", "Against the mean"],
            Rows =
            [
                .. strings.Zip(pictures.Strings, (one, detail) =>
                    (IReadOnlyList<string>)[.. Row(one.Number, one.Sensitivity), Interval(detail.BalanceDb, "dB")]
                ),
            ],
        };

    /// <summary>The finding: which string has most and which least; nothing for a single one.</summary>
    private static string Ends(IReadOnlyList<StringForecast> strings, Func<StringForecast, Figure> figure)
    {
        StringForecast most = strings.MaxBy(one => Math.Abs(figure(one).Value))!,
            least = strings.MinBy(one => Math.Abs(figure(one).Value))!;
        return strings.Count < 2
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Most at string {most.Number}, {FigureFormatter.Value(figure(most))}; least at string {least.Number}, "
                    + $"{FigureFormatter.Value(figure(least))}. "
            );
    }

    private static IEnumerable<DrawingViewModel> MotionOf(PickupPictures pictures)
    {
        if (pictures.Along.Count == 0)
        {
            yield break;
        }

        string amplitude = FigureFormatter.Value(pictures.AmplitudeM, "m");
        yield return new DrawingViewModel(
            $"What is heard along the middle string, share of the output in % per mm; nothing here has an interval of its own. In the "
                + $"table: pull of the magnets, what it does to the open string's pitch in the usual tuning (assumed), and overtones "
                + $"for a swing of {amplitude} over the pickup; forecast.",
            StringFigures.Aperture(pictures)
        )
        {
            Title = "What is heard along the string, pull and overtones",
            Header = ["String", "Pull", "Pitch", "2nd harmonic", "3rd harmonic"],
            Rows =
            [
                .. pictures.Strings.Select(one =>
                    (IReadOnlyList<string>)
                        [
                            one.Number.ToString(CultureInfo.InvariantCulture),
                            Interval(one.PullN, "N"),
                            one.PitchShift is { } shift
                                ? Interval(Times(shift, 1200 / Math.Log(2)), "cents")
                                : "needs scaleLength and fromBridge",
                            Interval(Times(one.SecondHarmonic, 100), "%"),
                            Interval(Times(one.ThirdHarmonic, 100), "%"),
                        ]
                ),
            ],
        };
    }

    private static DrawingViewModel BranchOf(
        string caption,
        string svg,
        string title,
        IReadOnlyList<SpectrumForecast> spectrum,
        Func<SpectrumForecast, Figure> figure
    ) =>
        new(caption, svg)
        {
            Title = title + " against frequency",
            Header = ["Frequency", title, "95 % interval", "Basis"],
            Rows =
            [
                .. spectrum.Select(line =>
                    (IReadOnlyList<string>)
                        [
                            FigureFormatter.Value(line.FrequencyHz, "Hz"),
                            FigureFormatter.Value(figure(line)),
                            FigureFormatter.Interval(figure(line)),
                            FigureFormatter.Basis(figure(line).Estimate.Basis),
                        ]
                ),
            ],
        };

    private static IReadOnlyList<string> Row(int number, Figure figure) =>
        [
            number.ToString(CultureInfo.InvariantCulture),
            FigureFormatter.Value(figure),
            FigureFormatter.Interval(figure),
            FigureFormatter.Basis(figure.Estimate.Basis),
        ];

    private static string Interval(Estimate estimate, string unit) =>
        $"{FigureFormatter.Value(estimate.Value, unit)} ({FigureFormatter.Value(estimate.Low, unit)} to "
        + $"{FigureFormatter.Value(estimate.High, unit)})";

    private static Estimate Times(Estimate estimate, double factor) =>
        new(estimate.Value * factor, estimate.Low * factor, estimate.High * factor, estimate.Basis);
}
