using System.Collections.Concurrent;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Readings;

/// <summary>What a good coil reads at any frequency: the forecast, carried to the recipe's own targets where it has them.</summary>
/// <param name="recipe">The recipe.</param>
/// <param name="coilIndex">One coil by itself, or null for the whole pickup.</param>
internal sealed class ExpectedReadings(Recipe recipe, int? coilIndex)
{
    /// <summary>How well a target is met by good coils, and how well Q is foretold beside inductance and eddy loss. Our assumptions, no source.</summary>
    private const double TargetDeviation = 0.012, QualityDeviation = 0.05, EddyDeviation = 0.25;

    private readonly ConcurrentDictionary<double, ExpectedReading?> _known = new();

    public ExpectedReading? At(double frequencyHz) => frequencyHz is >= 10 and <= 20_000 ? _known.GetOrAdd(frequencyHz, Compute) : null;

    private ExpectedReading? Compute(double frequencyHz)
    {
        Target? henry = Wanted("inductance"), ohm = Wanted("dcResistance");
        double targetHz = henry?.AtHz ?? VerdictLimits.UsualHz;
        Prediction prediction = Forecaster.Predict(Model(), load: null, new ForecastOptions { FrequenciesHz = [.. new[] { frequencyHz, targetHz }.Distinct()] });
        SpectrumForecast line = prediction.Pickup.Spectrum[0], target = prediction.Pickup.Spectrum[^1];
        double dc = prediction.Pickup.DcResistance.Value, scale = henry is null ? 1 : henry.Nominal.Si / target.Inductance.Value;
        double wantedDc = ohm is null ? dc : ohm.Nominal.Si * CopperWire.CorrectTo20C(1, ohm.TemperatureC);
        double wantedAc = wantedDc + Math.Max(0, line.Resistance.Value - dc) * scale, inductance = line.Inductance.Value * scale, ratio = wantedAc / wantedDc;
        double reactance = 2 * Math.PI * frequencyHz * inductance / wantedDc;
        double deviation = henry is null ? Math.Max(0.01, line.Inductance.Estimate.StandardDeviation / line.Inductance.Value) : TargetDeviation;
        double eddy = EddyDeviation * (1 - 1 / ratio);
        return new ExpectedReading(inductance, reactance / ratio, reactance, ratio, deviation, Math.Sqrt(deviation * deviation + QualityDeviation * QualityDeviation + eddy * eddy));
    }

    private Target? Wanted(string quantity) => coilIndex is { } index ? VerdictLimits.Find(recipe, index, quantity) : recipe.Coils.Count == 1 ? VerdictLimits.Find(recipe, 0, quantity) : recipe.Targets.GetValueOrDefault(quantity);

    private PickupModel Model()
    {
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        return coilIndex is { } index ? model with { Coils = [model.Coils[index]], Connection = Connection.Single } : model;
    }
}
