using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Spec;

/// <summary>Spec sheet of a model: what its recipe foretells, with interval and basis, on one page for a customer.</summary>
public static class SpecSheet
{
    /// <summary>
    /// True when the recipe asks for its turns to stay in the shop: tag "hide-turns" or "turns-hidden", or the words "turns hidden" or
    /// "hide turns" in its notes.
    /// </summary>
    public static bool HidesTurns(Recipe recipe) =>
        recipe.Tags.Any(tag =>
            tag.Equals("hide-turns", StringComparison.OrdinalIgnoreCase) || tag.Equals("turns-hidden", StringComparison.OrdinalIgnoreCase)
        )
        || recipe.Notes.Contains("turns hidden", StringComparison.OrdinalIgnoreCase)
        || recipe.Notes.Contains("hide turns", StringComparison.OrdinalIgnoreCase);

    /// <summary>The sheet.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="prediction">Its forecast on the load, with curves.</param>
    /// <param name="load">The load of the response.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="hideTurns">Leaves out turns and what tells them with the size (the effective area), also where the recipe does not ask
    /// for it.</param>
    public static Sheet Of(Recipe recipe, Prediction prediction, LoadCircuit load, SheetHeading heading, bool hideTurns = false)
    {
        bool hidden = hideTurns || HidesTurns(recipe);
        string loadWords = LoadFormatter.Of(load);
        List<SheetPart> parts =
        [
            new TitlePart("Electrical"),
            Table("quantity", "value", "95 % interval", "basis", [.. Electrical(prediction.Pickup, hidden).Select(Row)], [2.6, 1.4, 2, 1]),
            new TextPart(
                $"Resistances at 20 °C; inductance in series form at 1 kHz. Loaded means: {loadWords}. Forecast from the recipe, "
                    + $"not measured on a piece."
            ),
        ];
        parts.AddRange(Curve(prediction, "Response, loaded"));
        parts.Add(new TitlePart("Coils"));
        parts.Add(Coils(recipe, prediction, hidden));
        return new Sheet("Spec sheet of a model", recipe.Name, heading, parts, Sheet.CodeOf(recipe.Name));
    }

    /// <summary>The response on the load, if there is one.</summary>
    internal static IEnumerable<SheetPart> Curve(Prediction prediction, string words)
    {
        if (prediction.Curves.FirstOrDefault(curve => curve.Loaded) is { } curve)
        {
            ResonancePeak? peak = prediction.Pickup.LoadedResonance is { } top
                ? new ResonancePeak(top.Frequency.Value, top.Gain.Value, top.Q.Value)
                : null;
            yield return new CurvePart(
                peak is { } at
                    ? $"{words}: peak {FigureFormatter.Value(at.FrequencyHz, "Hz")}, {FigureFormatter.Value(at.GainDb, "dB")} against 20 Hz"
                    : $"{words}: no peak",
                curve.Response,
                peak
            );
        }
    }

    /// <summary>Wire, turns and size of every coil.</summary>
    internal static TablePart Coils(Recipe recipe, Prediction prediction, bool hidden) =>
        Table(
            "coil",
            "wire",
            "turns",
            "wound size",
            [.. recipe.Coils.Select((coil, index) => Coil(coil, prediction.Coils[index], hidden))],
            [1, 1.6, 1.1, 3.3]
        );

    private static IEnumerable<(string Words, Figure Figure)> Electrical(PickupForecast pickup, bool hidden)
    {
        yield return ("DC resistance at 20 °C", pickup.DcResistance);
        yield return ("inductance at 1 kHz", pickup.Inductance);
        yield return ("capacitance", pickup.Capacitance);
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
                yield return ($"its height, {load}", resonance.Gain);
            }
        }

        if (!hidden)
        {
            yield return ("hum, effective area", pickup.HumEffectiveArea);
        }
    }

    private static IReadOnlyList<string> Row((string Words, Figure Figure) line) =>
        [
            line.Words,
            FigureFormatter.Value(line.Figure),
            FigureFormatter.Interval(line.Figure),
            FigureFormatter.Basis(line.Figure.Estimate.Basis),
        ];

    private static IReadOnlyList<string> Coil(RecipeCoil coil, CoilForecast forecast, bool hidden)
    {
        string gauge = coil.Wire.Gauge.Length > 0 ? coil.Wire.Gauge : "as measured";
        return
        [
            coil.Name,
            $"{gauge} {KeyLabels.Of(coil.Wire.Insulation)}",
            hidden ? "not told" : coil.Winding.Turns.ToString("#,##0.##", CultureInfo.InvariantCulture),
            Size(forecast.OuterLength.Value, forecast.OuterWidth.Value, coil.Bobbin.WindingHeight.Si),
        ];
    }

    /// <summary>Sizes in millimetres and inches, m in.</summary>
    private static string Size(double lengthM, double widthM, double heightM) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{lengthM * 1e3:0.0} × {widthM * 1e3:0.0} × {heightM * 1e3:0.0} mm ({lengthM / 0.0254:0.00} × {widthM / 0.0254:0.00} × "
                + $"{heightM / 0.0254:0.00} in)"
        );

    private static TablePart Table(
        string first,
        string second,
        string third,
        string fourth,
        IReadOnlyList<IReadOnlyList<string>> rows,
        IReadOnlyList<double> widths
    ) => new([first, second, third, fourth], rows, widths);
}
