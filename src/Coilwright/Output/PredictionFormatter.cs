using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Entry;

namespace Coilwright.Output;

/// <summary>A prediction for people: every value with its interval and its basis.</summary>
public static class PredictionFormatter
{
    public static void Write(TextWriter writer, string name, Prediction prediction)
    {
        writer.WriteLine(name);
        foreach (CoilForecast coil in prediction.Coils)
        {
            writer.WriteLine();
            writer.WriteLine($"Coil {coil.Name}");
            WriteFigures(writer, coil.All.Select(figure => (FigureFormatter.Name(figure.Name), figure)));
        }

        writer.WriteLine();
        writer.WriteLine("Pickup");
        WriteFigures(writer, PickupFigures(prediction.Pickup));
        if (prediction.Warnings.Count > 0)
        {
            writer.WriteLine();
            foreach (ForecastWarning warning in prediction.Warnings)
            {
                writer.WriteLine($"Note, {FieldLabels.Inside(warning.Field)}: {KeyLabels.In(warning.Message)}");
            }
        }

        if (prediction.Sensitivity.Count > 0)
        {
            WriteSensitivity(writer, prediction.Sensitivity);
        }
    }

    /// <summary>A row each result, a column each change; every change with the half width of its own 95 % interval.</summary>
    private static void WriteSensitivity(TextWriter writer, IReadOnlyList<SensitivityLine> lines)
    {
        SensitivityLine[] possible = [.. lines.Where(line => line.WhyNot is null)];
        writer.WriteLine();
        writer.WriteLine("What a small change does, each by a whole forecast (± half the 95 % interval of the change)");
        Table table = new(["quantity", .. possible.Select(line => line.Words)]);
        foreach (ComparisonLine result in possible.SelectMany(line => line.Effects).DistinctBy(effect => effect.Name))
        {
            table.Add([
                FigureFormatter.Name(result.Name),
                .. possible.Select(line =>
                    line.Effects.FirstOrDefault(effect => effect.Name == result.Name) is { } effect
                        ? ComparisonFormatter.Change(effect)
                        : "–"
                ),
            ]);
        }

        table.Write(writer);
        foreach (SensitivityLine line in lines.Where(line => line.WhyNot is not null))
        {
            writer.WriteLine($"Cannot be made, {line.Words}: {line.WhyNot}");
        }

        foreach (
            (string words, ForecastWarning warning) in possible
                .SelectMany(line => line.Warnings.Select(warning => (line.Words, warning)))
                .DistinctBy(pair => pair.warning.Message)
        )
        {
            writer.WriteLine($"Note, {words}: {warning.Message}");
        }
    }

    private static IEnumerable<(string Words, Figure Figure)> PickupFigures(PickupForecast pickup)
    {
        yield return ("DC resistance at 20 °C", pickup.DcResistance);
        yield return ("inductance at 1 kHz", pickup.Inductance);
        yield return ("capacitance", pickup.Capacitance);
        foreach (Figure share in pickup.CapacitanceShares?.Present ?? [])
        {
            yield return ($"  of it {FigureFormatter.Name(share.Name)}", share);
        }

        foreach (
            (string load, ResonanceForecast? resonance) in new[]
            {
                ("unloaded", pickup.UnloadedResonance),
                ("loaded", pickup.LoadedResonance),
            }
        )
        {
            if (resonance is not null)
            {
                yield return ($"resonance, {load}", resonance.Frequency);
                yield return ($"  its height, {load}", resonance.Gain);
                yield return ($"  its Q, {load}", resonance.Q);
            }
        }

        if (pickup.Coupling is { } coupling)
        {
            yield return ("coupling of the coils", coupling);
        }

        foreach (Figure other in pickup.Others)
        {
            yield return (FigureFormatter.Name(other.Name), other);
        }

        foreach (SpectrumForecast line in pickup.Spectrum)
        {
            string at = FigureFormatter.Value(line.FrequencyHz, "Hz");
            yield return ($"inductance at {at}", line.Inductance);
            yield return ($"AC resistance at {at}", line.Resistance);
        }

        yield return ("hum, effective area", pickup.HumEffectiveArea);
        if (pickup.Coupling is not null)
        {
            yield return ("hum left of both coils'", pickup.HumResidual);
        }

        foreach (Figure slope in pickup.HumGradient)
        {
            yield return (FigureFormatter.Name(slope.Name), slope);
        }

        foreach (StringForecast one in pickup.Strings)
        {
            yield return ($"output, string {one.Number}", one.Sensitivity);
        }

        foreach (StringForecast one in pickup.Strings)
        {
            yield return ($"field at string {one.Number}", one.Field);
        }

        foreach (PoleForecast one in pickup.Poles)
        {
            yield return (
                $"field {FigureFormatter.Value(one.JigM, "m")} over pole {one.Number}{(pickup.Coupling is null ? "" : " of " + one.Coil)}",
                one.Field
            );
        }
    }

    private static void WriteFigures(TextWriter writer, IEnumerable<(string Words, Figure Figure)> figures)
    {
        Table table = new("quantity", "value", "95 % interval", "basis");
        foreach ((string words, Figure figure) in figures)
        {
            table.Add(words, FigureFormatter.Value(figure), FigureFormatter.Interval(figure), FigureFormatter.Basis(figure.Estimate.Basis));
        }

        table.Write(writer);
    }
}
