using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Solving;

/// <summary>
/// What a spool's resistance makes of a recipe: hold the turns, or hold the ohms. The one rule, at the winder, on the shelf and at the
/// desk.
/// </summary>
/// <param name="OhmPerM">Of the spool at 20 °C, Ω/m.</param>
/// <param name="Deviation">From the recipe's wire, as a part: 0.018 is 1.8 % more.</param>
/// <param name="Nominal">The recipe on its own wire, that wire taken exactly as specified.</param>
/// <param name="HoldTurns">The recipe's turns on this spool.</param>
/// <param name="HoldOhms">Whole turns that give each coil the recipe's resistance on this spool.</param>
/// <remarks>
/// The spool's diameter is taken to be the recipe's: 1 % of resistance is 0.5 % of diameter, which the build hardly feels.
/// </remarks>
public sealed record SpoolChoice(Estimate OhmPerM, double Deviation, SpoolOption Nominal, SpoolOption HoldTurns, SpoolOption HoldOhms)
{
    /// <summary>Both choices side by side, by whole forecasts.</summary>
    /// <param name="recipe">The pickup.</param>
    /// <param name="coils">Places of the coils that are wound from this spool; null for all.</param>
    /// <param name="ohmPerM">Resistance of the spool at 20 °C, Ω/m.</param>
    /// <param name="load">What hangs on it; null leaves the loaded peak out.</param>
    /// <param name="cancel">Stops it.</param>
    public static SpoolChoice Of(
        PickupModel recipe,
        IReadOnlyCollection<int>? coils,
        Estimate ohmPerM,
        LoadCircuit? load = null,
        CancellationToken cancel = default
    )
    {
        int[] wound = [.. coils ?? Enumerable.Range(0, recipe.Coils.Count)];
        double own = OwnOhmPerM(recipe.Coils[wound[0]].Wire);
        PickupModel specified = OnWire(recipe, wound, wire => Estimate.Exact(OwnOhmPerM(wire), Basis.Assumed)),
            turns = OnWire(recipe, wound, _ => ohmPerM),
            ohms = turns;
        foreach (int coil in wound)
        {
            ohms = WindingResistance.WithTurns(
                ohms,
                coil,
                Math.Round(WindingResistance.TurnsFor(turns, coil, WindingResistance.At20C(specified, coil)))
            );
        }

        PickupModel[] models = [specified, turns, ohms];
        SolvedPickup[] solved = new SolvedPickup[models.Length];
        Parallel.For(0, models.Length, new ParallelOptions { CancellationToken = cancel }, k =>
            solved[k] = new SolvedPickup(models[k], load, cancel: cancel)
        );
        SpoolOption[] options = [.. models.Select((model, k) => Option(model, PickupComparison.Between(solved[0], solved[k])))];
        return new SpoolChoice(ohmPerM, ohmPerM.Value / own - 1, options[0], options[1], options[2]);
    }

    private static double OwnOhmPerM(WireModel wire) =>
        wire.MeasuredOhmPerM?.Value ?? CopperWire.OhmPerM(wire.BareDiameterM.Value, 20, wire.ConductivitySPerM);

    private static PickupModel OnWire(PickupModel model, int[] coils, Func<WireModel, Estimate> ohmPerM) =>
        model with
        {
            Coils =
            [
                .. model.Coils.Select(
                    (coil, c) => coils.Contains(c) ? coil with { Wire = coil.Wire with { MeasuredOhmPerM = ohmPerM(coil.Wire) } } : coil
                ),
            ],
        };

    private static SpoolOption Option(PickupModel model, IReadOnlyList<ComparisonLine> lines) =>
        new(
            [.. model.Coils.Select(coil => coil.Winding.Turns)],
            [
                .. model.Coils.Select(
                    (_, c) => lines.First(line => line.Name == Quantity.DcResistance.KeyOfCoil(c, model.Coils.Count)).Second!.Value
                ),
            ],
            lines
        );
}
