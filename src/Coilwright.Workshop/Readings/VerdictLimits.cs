using System.Collections.Concurrent;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Readings;

/// <summary>A wanted value and the ends of what is accepted, SI.</summary>
/// <param name="Nominal">Wanted.</param>
/// <param name="Low">Lowest accepted.</param>
/// <param name="High">Highest accepted.</param>
/// <param name="IsTarget">True for the recipe's own target; false for the 95 % interval of the forecast.</param>
/// <param name="AtHz">Frequency it holds at; null for a resistance.</param>
public sealed record Band(double Nominal, double Low, double High, bool IsTarget, double? AtHz = null);

/// <summary>What a coil or a pickup is judged against. Resistance at 20 °C.</summary>
public sealed record VerdictLimits
{
    public required Band Resistance { get; init; }

    /// <summary>Null when it is neither wanted nor foretold.</summary>
    public Band? Inductance { get; init; }

    /// <summary>Turns of the coil; 0 when not known.</summary>
    public double NominalTurns { get; init; }

    /// <summary>How many coils in series the reading is taken across.</summary>
    public int CoilsInSeries { get; init; } = 1;

    /// <summary>Q expected at a frequency in Hz; null when it cannot be foretold.</summary>
    public Func<double, double?> ExpectedQ { get; init; } = _ => null;

    /// <summary>Limits for one coil of a recipe at the winder: its targets, and the forecast where it has none.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="coilIndex">Which coil, from 0.</param>
    public static VerdictLimits ForCoil(Recipe recipe, int coilIndex)
    {
        Forecasts forecasts = new(recipe);
        bool alone = recipe.Coils.Count == 1;
        return new VerdictLimits
        {
            Resistance = OfTarget(Find(recipe, coilIndex, "dcResistance"), isResistance: true) ?? OfForecast(forecasts.Coil(coilIndex).DcResistance, null),
            Inductance = OfTarget(Find(recipe, coilIndex, "inductance"), isResistance: false) ?? OfForecast(forecasts.Coil(coilIndex).Inductance, UsualHz),
            NominalTurns = recipe.Coils[coilIndex].Winding.Turns,
            ExpectedQ = alone ? forecasts.Quality : _ => null,
        };
    }

    /// <summary>Limits for the whole pickup.</summary>
    public static VerdictLimits ForPickup(Recipe recipe)
    {
        if (recipe.Coils.Count == 1)
        {
            return ForCoil(recipe, 0);
        }

        Forecasts forecasts = new(recipe);
        return new VerdictLimits
        {
            Resistance = OfTarget(recipe.Targets.GetValueOrDefault("dcResistance"), isResistance: true) ?? OfForecast(forecasts.Pickup.DcResistance, null),
            Inductance = OfTarget(recipe.Targets.GetValueOrDefault("inductance"), isResistance: false) ?? OfForecast(forecasts.Pickup.Inductance, UsualHz),
            NominalTurns = recipe.Coils.Sum(coil => coil.Winding.Turns),
            CoilsInSeries = recipe.Connection == Connection.Series ? recipe.Coils.Count : 1,
            ExpectedQ = forecasts.Quality,
        };
    }

    private const double UsualHz = 1000;

    private static Target? Find(Recipe recipe, int coilIndex, string quantity)
    {
        bool alone = recipe.Coils.Count == 1 || (recipe.Connection == Connection.Single && coilIndex == 0);
        return recipe.Coils[coilIndex].Targets.GetValueOrDefault(quantity) ?? (alone ? recipe.Targets.GetValueOrDefault(quantity) : null);
    }

    private static Band? OfTarget(Target? target, bool isResistance)
    {
        if (target is null)
        {
            return null;
        }

        double to20C = isResistance ? CopperWire.CorrectTo20C(1, target.TemperatureC) : 1;
        return new Band(target.Nominal.Si * to20C, target.Low * to20C, target.High * to20C, IsTarget: true, isResistance ? null : target.AtHz ?? UsualHz);
    }

    private static Band OfForecast(Figure figure, double? atHz) => new(figure.Value, figure.Estimate.Low, figure.Estimate.High, IsTarget: false, atHz);

    /// <summary>Forecasts of one recipe, made when first asked for.</summary>
    private sealed class Forecasts(Recipe recipe)
    {
        private readonly Lazy<Prediction> _usual = new(() => Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null));
        private readonly ConcurrentDictionary<double, double?> _quality = new();

        public PickupForecast Pickup => _usual.Value.Pickup;

        public CoilForecast Coil(int index) => _usual.Value.Coils[index];

        public double? Quality(double frequencyHz) => frequencyHz is >= 10 and <= 20_000 ? _quality.GetOrAdd(frequencyHz, Compute) : null;

        private double? Compute(double frequencyHz)
        {
            Prediction prediction = Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null, new ForecastOptions { FrequenciesHz = [frequencyHz] });
            SpectrumForecast line = prediction.Pickup.Spectrum[0];
            return 2 * Math.PI * frequencyHz * line.Inductance.Value / line.Resistance.Value;
        }
    }
}
