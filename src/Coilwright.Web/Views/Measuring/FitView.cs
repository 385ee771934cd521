using System.Globalization;
using Coilwright.Application.Measuring;
using Coilwright.Formats.Curves;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views.Measuring;

/// <summary>A fitted curve as its page shows it.</summary>
/// <param name="Fitted">The fit beside what was read.</param>
public sealed record FitView(FittedCurve Fitted)
{
    private FitAnswer Answer => Fitted.Answer;

    /// <summary>Inductance at the last frequency asked for, the one that people compare; null when no winding can have the fit.</summary>
    public InductanceAt? First => Answer.Inductances.Count > 0 ? Answer.Inductances[^1] : null;

    /// <summary>Why there is no answer; empty when there is one.</summary>
    public string NoResult => Answer.IsWinding ? "" : ProblemWords(Answer.NoResult);

    /// <summary>Every part with its interval.</summary>
    public IReadOnlyList<MeasuredLine> Parts => [.. Enumerable.Range(0, Answer.Fit.Parts.Count).Select(PartOf)];

    /// <summary>How it was read, and what stands behind the numbers.</summary>
    public IReadOnlyList<string> Notes =>
        [
            $"{Answer.Path}: {Answer.Table.Curve.Count} points from {FigureFormatter.Value(Answer.Table.Curve.FrequenciesHz[0], "Hz")} to "
                + $"{FigureFormatter.Value(Answer.Table.Curve.FrequenciesHz[^1], "Hz")}; {Answer.Table.Delimiter} between cells, decimal "
                + $"{Answer.Table.Decimal}; {string.Join("; ", Answer.Table.Columns)}.",
            string.Create(CultureInfo.InvariantCulture, $"Scatter around the fit: {Answer.Residual.Value:0.####} {Answer.Residual.Unit}."),
            .. Answer.Ratios.Select(RatioOf),
            .. Answer.Fit.Untold.Select(untold => ProblemWords(FitAnswer.Sentence(untold))),
            "Intervals come from the scatter around the fit; an error of the instrument's own is not in them.",
        ];

    /// <summary>The figure.</summary>
    public DrawingViewModel Figure =>
        new(
            Fitted.IsGain
                ? "Gain, dB: copper as read, dashed as fitted; the numbers stand above."
                : "Impedance, kΩ: copper as read, dashed as fitted; the numbers stand above.",
            MeasuredFigures.Curve(Drawn(Fitted.Read), Drawn(Fitted.Fitted), Fitted.IsGain ? "Gain, dB" : "Impedance, kΩ")
        );

    /// <summary>Where the impedance is highest, in words.</summary>
    public string Top =>
        Answer.Resonance is { } top
            ? $"{FigureFormatter.Value(top.TopHz, "Hz", 4)}, {FigureFormatter.Value(top.TopOhm, "Ω")}, Q "
                + top.Q.ToString("0.00", CultureInfo.InvariantCulture)
            : "";

    /// <summary>What a meter would show at each frequency asked for.</summary>
    public IReadOnlyList<MeasuredLine> Inductances =>
        [.. Answer.Inductances.Select(one => MeasuredLine.Of($"Inductance at {FigureFormatter.Value(one.Hz, "Hz")}", one.Series, "H"))];

    /// <summary>By how much a meter is off there.</summary>
    public static string Meter(InductanceAt one)
    {
        string shown = string.Create(CultureInfo.InvariantCulture, $"{one.ApparentH:0.000} H, {100 * one.Error:+0.00;−0.00} %");
        return one.IsRefused ? $"too near the resonance for a meter, which would show {shown}" : $"a meter would show {shown}";
    }

    private static string RatioOf(RatioAnswer one) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{one.Path} over the first curve: missed by {one.MissedDb:0.0} dB, level moved by {one.MovedDb:+0.0;−0.0;0.0} dB."
        );

    private MeasuredLine PartOf(int place)
    {
        Estimate part = Answer.Fit.Part(place);
        string unit = FitAnswer.UnitOf(Answer.Fit.Parts, place),
            name = FieldLabels.Of(Answer.Fit.Parts.NameOf(place));
        return FitAnswer.Known(part)
            ? MeasuredLine.Of(name, part, unit)
            : new MeasuredLine(name, FigureFormatter.Value(part.Value, unit, 4), "not told by this curve");
    }

    private (double Hz, double Value)[] Drawn(IReadOnlyList<(double Hz, double Value)> points) =>
        [.. points.Select(one => Fitted.IsGain ? one : (one.Hz, one.Value / 1e3))];

    private static string ProblemWords(string words) => ProblemSentences.Sentence(KeyLabels.In(words));
}
