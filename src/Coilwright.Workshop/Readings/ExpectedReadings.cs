using System.Collections.Concurrent;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Readings;

/// <summary>What a good coil reads at any frequency: the forecast, carried towards the recipe's own targets where it has them.</summary>
/// <param name="recipe">The recipe.</param>
/// <param name="coilIndex">One coil by itself, or null for the whole pickup.</param>
internal sealed class ExpectedReadings(Recipe recipe, int? coilIndex)
{
    /// <summary>
    /// How well a target is met by good coils, and how well Q is foretold beside inductance and eddy loss. Our assumptions, no source.
    /// </summary>
    private const double TargetDeviation = 0.012,
        LeastDeviation = 0.01,
        QualityDeviation = 0.05,
        EddyDeviation = 0.25;

    /// <summary>ω²LC above which a meter shows the resonance more than the winding.</summary>
    private const double NearResonance = 0.5;

    private readonly ConcurrentDictionary<double, ExpectedReading?> _known = new();

    public ExpectedReading? At(double frequencyHz) => frequencyHz is >= 10 and <= 20_000 ? _known.GetOrAdd(frequencyHz, Compute) : null;

    private ExpectedReading? Compute(double frequencyHz)
    {
        Target? henry = Wanted(QuantityKey.Inductance),
            ohm = Wanted(QuantityKey.DcResistance);
        double targetHz = henry?.AtHz ?? VerdictLimits.UsualHz;
        Prediction prediction = Forecaster.Predict(
            Model(),
            load: null,
            new ForecastOptions { FrequenciesHz = [.. new[] { frequencyHz, targetHz }.Distinct()], Strings = false }
        );
        SpectrumForecast line = prediction.Pickup.Spectrum[0],
            target = prediction.Pickup.Spectrum[^1];
        Figure own = Across(prediction.Pickup);
        double part = Math.Max(LeastDeviation, line.Inductance.Estimate.StandardDeviation / line.Inductance.Value);
        double dc = prediction.Pickup.DcResistance.Value,
            wanted = henry is null ? 1 : Scale(target, own.Value, henry.Nominal.Si);
        (double mean, double common) = henry is null ? (0, part) : Between(Math.Log(wanted), part);
        double scale = Math.Exp(mean);
        double wantedDc = ohm is null ? dc : ohm.Nominal.Si * Quantity.DcResistance.Factor(ohm);
        double wantedAc = wantedDc + Math.Max(0, line.Resistance.Value - dc) * scale,
            inductance = line.Inductance.Value * scale,
            ratio = wantedAc / wantedDc;
        double near = MeterModel.Nearness(inductance, own.Value, frequencyHz);
        if (near > NearResonance)
        {
            return null;
        }

        (double shownH, double quality) = MeterModel.Of(inductance, wantedAc, own.Value, frequencyHz);
        double eddy = EddyDeviation * (1 - 1 / ratio),
            capacitance = own.Estimate.StandardDeviation / own.Value,
            shift = near / (1 - near) * capacitance;
        double targetNear = henry is null ? 0 : MeterModel.Nearness(inductance, own.Value, targetHz),
            shiftH = Math.Abs(near / (1 - near) - targetNear / (1 - targetNear)) * capacitance;
        double deviation = Root(common, shiftH);
        return new ExpectedReading(
            shownH,
            quality,
            2 * Math.PI * frequencyHz * inductance / wantedDc,
            ratio,
            deviation,
            Root(deviation, QualityDeviation, eddy, shift)
        );
    }

    /// <summary>What lies across the meter: a coil at its winder has no leads yet, and no metal but its own.</summary>
    private Figure Across(PickupForecast pickup) =>
        coilIndex is not null && pickup.CapacitanceShares is { } shares ? shares.Winding : pickup.Capacitance;

    /// <summary>
    /// Where good coils lie, ln over the forecast, when a target says one thing and the forecast another: either may be right, each by its
    /// precision.
    /// </summary>
    /// <param name="target">ln of the target over the forecast.</param>
    /// <param name="forecastDeviation">Standard deviation of the forecast, a part of one.</param>
    private static (double Mean, double Deviation) Between(double target, double forecastDeviation)
    {
        double precision = 1 / (TargetDeviation * TargetDeviation),
            other = 1 / (forecastDeviation * forecastDeviation),
            share = precision / (precision + other);
        double variance =
            share * TargetDeviation * TargetDeviation
            + (1 - share) * forecastDeviation * forecastDeviation
            + share * (1 - share) * target * target; // of a mixture
        return (share * target, Math.Sqrt(variance));
    }

    /// <summary>
    /// What the forecast inductance is multiplied by so that a meter shows the target; the coil's own capacitance makes it show a little
    /// more than the winding has.
    /// </summary>
    private static double Scale(SpectrumForecast target, double capacitanceF, double wantedH)
    {
        double scale = wantedH / target.Inductance.Value;
        for (
            int pass = 0;
            pass < 6 && MeterModel.Nearness(scale * target.Inductance.Value, capacitanceF, target.FrequencyHz) < NearResonance;
            pass++
        )
        {
            scale *=
                wantedH
                / MeterModel.Of(scale * target.Inductance.Value, target.Resistance.Value, capacitanceF, target.FrequencyHz).InductanceH;
        }

        return scale;
    }

    private static double Root(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (double part in parts)
        {
            sum += part * part;
        }

        return Math.Sqrt(sum);
    }

    private Target? Wanted(string quantity)
    {
        int? only = recipe.Coils.Count == 1 ? 0 : null;
        return (coilIndex ?? only) is { } index ? VerdictLimits.Find(recipe, index, quantity) : recipe.Targets.GetValueOrDefault(quantity);
    }

    private PickupModel Model()
    {
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        return coilIndex is { } index ? model.Alone(index) : model;
    }
}
