using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>What every forecast must hold to, whatever the recipe.</summary>
internal static class ForecastSoundness
{
    /// <summary>Quantities that may lie below zero.</summary>
    private static readonly string[] s_signed =
    [
        "gain",
        "coupling",
        "effectiveArea",
        "residual",
        "gradientX",
        "gradientY",
        "gradientZ",
        "fieldAtStrings",
        "poleField",
        "linkage",
        "sensitivity",
    ];

    private static readonly ForecastOptions s_options = new() { FrequenciesHz = [20, 1_000, 10_000, 20_000], CurvePoints = 30 };

    /// <summary>Kinds of fault in a recipe's forecast; none when it is sound.</summary>
    public static IReadOnlyList<string> FaultsOf(Recipe recipe, CancellationToken cancel)
    {
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        Prediction prediction;
        try
        {
            prediction = Forecaster.Predict(model, UsualLoad.All[0].Load, s_options, cancel);
        }
#pragma warning disable CA1031 // every exception is what is looked for
        catch (Exception fault) when (fault is not OperationCanceledException)
#pragma warning restore CA1031
        {
            return [$"{fault.GetType().Name}: {fault.Message.Split('\n')[0]} {PlaceOf(fault)}"];
        }

        return [.. FaultsOf(prediction).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>The first line of the trace that is our own and no guard.</summary>
    private static string? PlaceOf(Exception fault) =>
        fault
            .StackTrace?.Split('\n')
            .Select(line => line.Trim().Split(" in ")[0])
            .FirstOrDefault(line =>
                line.Contains("Coilwright", StringComparison.Ordinal) && !line.Contains("Require", StringComparison.Ordinal)
            );

    private static IEnumerable<string> FaultsOf(Prediction prediction)
    {
        PickupForecast pickup = prediction.Pickup;
        IEnumerable<(string Of, Figure Figure)> all =
        [
            .. prediction.Coils.SelectMany(coil => coil.All.Select(figure => ("coil " + figure.Name, figure))),
            .. pickup.All.Select(figure => ("pickup " + figure.Name, figure)),
            .. pickup.Spectrum.SelectMany(line =>
                new[] { ("spectrum", line.Inductance), ("spectrum", line.Resistance) }.Select(pair =>
                    (string.Create(CultureInfo.InvariantCulture, $"spectrum {pair.Item2.Name} {line.FrequencyHz}"), pair.Item2)
                )
            ),
        ];
        foreach ((string of, Figure figure) in all)
        {
            Estimate e = figure.Estimate;
            if (!double.IsFinite(e.Value) || !double.IsFinite(e.Low) || !double.IsFinite(e.High))
            {
                yield return "not finite: " + of;
            }
            else if (e.Low > e.Value || e.Value > e.High)
            {
                yield return "inverted interval: " + of;
            }
            else if (IsPositive(figure.Name) && e.Low < 0)
            {
                yield return "negative: " + of;
            }
        }

        foreach (SpectrumForecast line in pickup.Spectrum.Where(line => line.Resistance.Value < pickup.DcResistance.Value * (1 - 1e-6)))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"less than the winding's resistance at {line.FrequencyHz} Hz");
        }

        if (
            prediction
                .Curves.SelectMany(curve => curve.Response.Points)
                .Any(point => !double.IsFinite(point.GainDb) || !double.IsFinite(point.ImpedanceOhm))
        )
        {
            yield return "not finite: curve";
        }
    }

    private static bool IsPositive(string name) => !s_signed.Contains(name, StringComparer.OrdinalIgnoreCase);
}
