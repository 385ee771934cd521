using System.Globalization;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Spread;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Recipes;

/// <summary>A recipe's targets as limits on what a run gives: resistance at 20 °C, inductance at 1 kHz.</summary>
public static class RecipeTargets
{
    /// <summary>By quantity name; a coil's own targets as "coils[0].dcResistance", or as the pickup's when there is one coil.</summary>
    public static IReadOnlyDictionary<string, SpreadTarget> ForRun(Recipe recipe)
    {
        Dictionary<string, SpreadTarget> limits = new(StringComparer.Ordinal);
        for (int c = 0; c < recipe.Coils.Count; c++)
        {
            string of = recipe.Coils.Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"coils[{c}].");
            foreach ((string name, Target target) in recipe.Coils[c].Targets)
            {
                limits[of + name] = Limits(recipe, name, target);
            }
        }

        foreach ((string name, Target target) in recipe.Targets)
        {
            limits[name] = Limits(recipe, name, target);
        }

        return limits;
    }

    /// <summary>Targets that leave out what the recipe itself forecasts: every good coil would be rejected.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="prediction">Its forecast.</param>
    public static IReadOnlyList<ForecastWarning> LeavingOutForecast(Recipe recipe, Prediction prediction)
    {
        List<ForecastWarning> warnings = [];
        foreach ((string name, SpreadTarget target) in ForRun(recipe))
        {
            CoilForecast? coil = name.StartsWith("coils[", StringComparison.Ordinal)
                ? prediction.Coils[int.Parse(name.AsSpan(6, name.IndexOf(']', StringComparison.Ordinal) - 6), CultureInfo.InvariantCulture)]
                : null;
            string of = coil is null ? "" : name[..(name.IndexOf('.', StringComparison.Ordinal) + 1)],
                quantity = name[of.Length..];
            double shown = Shown(quantity, coil, prediction.Pickup);
            if (shown < target.Low || shown > target.High)
            {
                Quantity known = Quantity.Find(quantity)!;
                warnings.Add(
                    new ForecastWarning(
                        $"{of}targets.{quantity}",
                        $"the target for {known.Label}, {known.Written(target.Low)} to {known.Written(target.High)}, "
                            + $"leaves out what this recipe forecasts: a meter would show {known.Written(shown)}"
                    )
                );
            }
        }

        return warnings;
    }

    /// <summary>What a meter would show of a coil, or of the whole pickup; not a number for a quantity without a forecast here.</summary>
    private static double Shown(string quantity, CoilForecast? coil, PickupForecast pickup) =>
        quantity switch
        {
            QuantityKey.Inductance => coil?.Inductance.Value ?? AsShown(pickup),
            QuantityKey.DcResistance => (coil?.DcResistance ?? pickup.DcResistance).Value,
            _ => double.NaN,
        };

    /// <summary>Inductance at 1 kHz as a meter shows it, the pickup's own capacitance included.</summary>
    private static double AsShown(PickupForecast pickup) =>
        MeterModel.Of(pickup.Inductance.Value, pickup.DcResistance.Value, pickup.Capacitance.Value, 1000).InductanceH;

    private static SpreadTarget Limits(Recipe recipe, string name, Target target)
    {
        double factor = name switch
        {
            QuantityKey.DcResistance => Quantity.DcResistance.Factor(target),
            QuantityKey.Inductance when target.AtHz is { } atHz && Math.Abs(atHz - 1000) > 1 => To1KiloHertz(
                recipe,
                Math.Clamp(atHz, 10, 20_000)
            ),
            _ => 1,
        };
        return new SpreadTarget(target.Nominal.Si * factor, target.Low * factor, target.High * factor);
    }

    /// <summary>Inductance at 1 kHz over that at another frequency, by the forecast.</summary>
    private static double To1KiloHertz(Recipe recipe, double atHz)
    {
        PickupForecast pickup = Forecaster
            .Predict(RecipeModelBuilder.ToModel(recipe), null, new ForecastOptions { FrequenciesHz = [atHz] })
            .Pickup;
        return pickup.Inductance.Value / pickup.Spectrum[0].Inductance.Value;
    }
}
