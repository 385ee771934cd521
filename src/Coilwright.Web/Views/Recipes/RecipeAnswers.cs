using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Formatting;

namespace Coilwright.Web.Views.Recipes;

/// <summary>The five answers that stay in sight above every view of a recipe.</summary>
internal static class RecipeAnswers
{
    private const string OutputUnit = "V·s/m";

    /// <summary>Ohms, inductance, peak, output and fill, in this order; each stands there even when it cannot be told.</summary>
    /// <param name="now">The forecast; null while the recipe cannot be forecast.</param>
    /// <param name="saved">What it is compared with; null for nothing.</param>
    public static IReadOnlyList<RecipeAnswer> Of(Prediction? now, Prediction? saved)
    {
        string peak = now?.Named.ContainsKey(QuantityKey.LoadedPeak) == false ? QuantityKey.UnloadedPeak : QuantityKey.LoadedPeak;
        return
        [
            Answer("Ohms at 20 °C", QuantityKey.DcResistance, "–"),
            Answer("Inductance, 1 kHz", QuantityKey.Inductance, "–"),
            Answer(peak == QuantityKey.LoadedPeak ? "Peak on this load" : "Peak, unloaded", peak, "no peak"),
            Answer("Output at 1 m/s", QuantityKey.Output, "no strings"),
            Answer(now?.Coils.Count > 1 ? "Fill, fuller coil" : "Fill of the bobbin", QuantityKey.Fill, "no room stated"),
        ];

        RecipeAnswer Answer(string label, string quantity, string missing) =>
            Told(label, (now?.Named.GetValueOrDefault(quantity), saved?.Named.GetValueOrDefault(quantity)), now is null ? "–" : missing);
    }

    private static RecipeAnswer Told(string label, (NamedFigure? Now, NamedFigure? Saved) figures, string missing)
    {
        if (figures.Now is not { } figure)
        {
            return new RecipeAnswer(label, missing);
        }

        return new RecipeAnswer(label, Value(figure.Estimate.Value, figure.Unit))
        {
            Estimate = figure.Estimate,
            Interval = Interval(figure),
            Change = figures.Saved is { } then ? Change(then, figure) : "",
        };
    }

    /// <summary>Output is asked for a metre a second, so its unit is the volt.</summary>
    private static string Value(double si, string unit) =>
        unit == OutputUnit ? FigureFormatter.Value(si, "V") : ForecastNumberFormatter.Write(si, unit);

    private static string Interval(NamedFigure figure) =>
        ForecastNumberFormatter.Interval(figure.Estimate, figure.Unit == OutputUnit ? "V" : figure.Unit);

    /// <summary>Decibels for the output, which the ear hears in; the bare difference for the rest; nothing when none shows.</summary>
    private static string Change(NamedFigure then, NamedFigure now)
    {
        double before = then.Estimate.Value,
            after = now.Estimate.Value;
        if (Value(before, now.Unit) == Value(after, now.Unit))
        {
            return "";
        }

        double moved = now.Unit == OutputUnit ? 20 * Math.Log10(after / before) : after - before;
        string size =
            now.Unit == OutputUnit
                ? FigureFormatter.Value(Math.Abs(moved), "dB").TrimStart('+')
                : ForecastNumberFormatter.Write(Math.Abs(moved), now.Unit);
        return (moved < 0 ? "−" : "+") + size;
    }
}
