using System.Globalization;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Output;

/// <summary>A fitted curve for people.</summary>
internal static class FitFormatter
{
    public static void Write(TextWriter writer, FitAnswer answer)
    {
        CurveFit fit = answer.Fit;
        writer.WriteLine(answer.Path);
        writer.WriteLine(
            $"  read: {answer.Table.Curve.Count} points from {FigureFormatter.Value(answer.Table.Curve.FrequenciesHz[0], "Hz")} to "
                + $"{FigureFormatter.Value(answer.Table.Curve.FrequenciesHz[^1], "Hz")}; {answer.Table.Delimiter} between cells, "
                + $"decimal {answer.Table.Decimal}"
        );
        writer.WriteLine("  columns: " + string.Join("; ", answer.Table.Columns));
        writer.WriteLine();
        if (answer.Resonance is not { } resonance)
        {
            writer.WriteLine("  " + answer.NoResult);
            return;
        }

        WriteFound(writer, answer, resonance);
        (double value, string residualUnit) = answer.Residual;
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  scatter around the fit {value:0.####} {residualUnit}"));
        foreach (RatioAnswer one in answer.Ratios)
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {Path.GetFileName(one.Path)} over the first curve: missed by {one.MissedDb:0.0} dB, level moved by "
                        + $"{one.MovedDb:+0.0;-0.0;0.0} dB"
                )
            );
        }

        if (answer.Ratios.Count > 0)
        {
            writer.WriteLine("  What hung on the pickup in every curve (instrument, leads) is in its capacitance and loss.");
        }

        foreach (UntoldParts untold in fit.Untold)
        {
            writer.WriteLine("  Note: " + FitAnswer.Sentence(untold));
        }

        writer.WriteLine("  Intervals come from the scatter around the fit; an error of the instrument's own is not in them.");
    }

    private static void WriteFound(TextWriter writer, FitAnswer answer, ImpedanceResonance resonance)
    {
        CurveFit fit = answer.Fit;
        Table table = new("part", "value", "95 % interval");
        for (int i = 0; i < fit.Parts.Count; i++)
        {
            Estimate part = fit.Part(i);
            string unit = FitAnswer.UnitOf(fit.Parts, i);
            table.Add(
                fit.Parts.NameOf(i),
                FigureFormatter.Value(part.Value, unit, 4),
                FitAnswer.Known(part)
                    ? $"{FigureFormatter.Value(part.Low, unit, 4)} – {FigureFormatter.Value(part.High, unit, 4)}"
                    : "not told by this curve"
            );
        }

        table.Write(writer);
        writer.WriteLine();
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  impedance highest at {FigureFormatter.Value(resonance.TopHz, "Hz", 4)}, "
                    + $"{FigureFormatter.Value(resonance.TopOhm, "Ω")}, Q {resonance.Q:0.00}"
            )
        );
        foreach (InductanceAt one in answer.Inductances)
        {
            string said =
                $"  at {FigureFormatter.Value(one.Hz, "Hz")}: series inductance {FigureFormatter.Value(one.Series.Value, "H", 4)} (95 "
                + $"%: {FigureFormatter.Value(one.Series.Low, "H", 4)} – {FigureFormatter.Value(one.Series.High, "H", 4)})";
            writer.WriteLine(
                said
                    + (
                        one.IsRefused
                            ? string.Create(
                                CultureInfo.InvariantCulture,
                                $"; too near the resonance to be read by a meter: it would show {one.ApparentH:0.000} H, "
                                    + $"{100 * one.Error:+0.0;-0.0} %"
                            )
                            : string.Create(
                                CultureInfo.InvariantCulture,
                                $"; a meter would show {one.ApparentH:0.000} H, {100 * one.Error:+0.00;-0.00} %"
                            )
                    )
            );
        }
    }

    public static string Write(FitAnswer answer)
    {
        using StringWriter writer = new(CultureInfo.InvariantCulture);
        Write(writer, answer);
        return writer.ToString().TrimEnd();
    }
}
