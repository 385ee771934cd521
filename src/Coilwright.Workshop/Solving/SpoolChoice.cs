using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>What a spool's resistance makes of a recipe: hold the turns, or hold the ohms.</summary>
/// <param name="OhmPerM">Of the spool at 20 °C, Ω/m.</param>
/// <param name="Deviation">From the recipe's wire, as a part: 0.018 is 1.8 % more.</param>
/// <param name="Nominal">The recipe on its own wire.</param>
/// <param name="HoldTurns">The recipe's turns on this spool.</param>
/// <param name="HoldOhms">Turns that give the recipe's resistance on this spool.</param>
public sealed record SpoolChoice(double OhmPerM, double Deviation, SpoolOption Nominal, SpoolOption HoldTurns, SpoolOption HoldOhms)
{
    private static readonly ForecastOptions s_quick = new() { Strings = false };

    /// <summary>Both choices side by side.</summary>
    /// <param name="recipe">The recipe; every coil is wound from this spool.</param>
    /// <param name="lengthM">Length that was measured, m.</param>
    /// <param name="ohm">Its resistance as read, Ω.</param>
    /// <param name="temperatureC">Its temperature, °C.</param>
    public static SpoolChoice Of(Recipe recipe, double lengthM, double ohm, double temperatureC)
    {
        double ohmPerM = CopperWire.CorrectTo20C(ohm / lengthM, temperatureC);
        PickupModel nominal = RecipeModelBuilder.ToModel(recipe);
        PickupModel spool = nominal with { Coils = [.. nominal.Coils.Select(coil => coil with { Wire = coil.Wire with { MeasuredOhmPerM = Estimate.Within(ohmPerM, 0.005, Basis.Measured) } })] };
        double wanted = Ohm(nominal), share = 1;
        for (int round = 0; round < 8; round++)
        {
            share *= wanted / Ohm(Wound(spool, share));
        }

        WireModel own = nominal.Coils[0].Wire;
        double ownOhmPerM = own.MeasuredOhmPerM?.Value ?? CopperWire.OhmPerM(own.BareDiameterM.Value, 20, own.ConductivitySPerM);
        SpoolOption as1 = SpoolOption.Of(nominal, null);
        return new SpoolChoice(ohmPerM, ohmPerM / ownOhmPerM - 1, as1, SpoolOption.Of(spool, as1), SpoolOption.Of(Wound(spool, share, whole: true), as1));
    }

    private static double Ohm(PickupModel model) => Forecaster.Predict(model, null, s_quick).Pickup.DcResistance.Value;

    private static PickupModel Wound(PickupModel model, double share, bool whole = false) => model with
    {
        Coils = [.. model.Coils.Select(coil => coil with { Winding = coil.Winding with { Turns = whole ? Math.Round(coil.Winding.Turns * share) : coil.Winding.Turns * share } })],
    };
}

/// <summary>One of the choices, with what it changes against the recipe on its own wire.</summary>
/// <param name="Turns">Of each coil.</param>
/// <param name="ResistanceOhm">Of the pickup at 20 °C.</param>
/// <param name="InductanceH">Of the pickup at 1 kHz.</param>
/// <param name="InductanceChange">As a part: −0.036 is 3.6 % less.</param>
/// <param name="OutputChangeDb">Change in output; null without strings in the recipe.</param>
public sealed record SpoolOption(IReadOnlyList<double> Turns, double ResistanceOhm, double InductanceH, double InductanceChange, double? OutputChangeDb)
{
    private double? Output { get; init; }

    internal static SpoolOption Of(PickupModel model, SpoolOption? against)
    {
        Prediction prediction = Forecaster.Predict(model, null);
        IReadOnlyDictionary<string, double> values = PredictionValues.Of(prediction);
        double? output = values.TryGetValue("output", out double found) ? found : null;
        double henry = values["inductance"];
        return new SpoolOption(
            [.. model.Coils.Select(coil => coil.Winding.Turns)], values["dcResistance"], henry, against is null ? 0 : henry / against.InductanceH - 1,
            output is { } now && against?.Output is { } then ? 20 * Math.Log10(now / then) : against is null && output is not null ? 0 : null)
        { Output = output };
    }
}
