using System.Collections.Concurrent;
using Coilwright.Analysis.Comparisons;
using Coilwright.Physics;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Solving;

namespace Coilwright.Workshop.Stock;

/// <summary>A spool that is off, against the coil of a batch: hold the turns, or hold the ohms. SI units.</summary>
/// <param name="RecipeTurns">Turns of the recipe.</param>
/// <param name="RecipeOhm">Resistance at 20 °C that the recipe's own wire would give, Ω.</param>
/// <param name="HoldTurnsOhm">Resistance at 20 °C of the recipe's turns on this spool, Ω.</param>
/// <param name="HoldOhmsTurns">Whole turns of this spool that read as the recipe does.</param>
/// <param name="HoldOhmsInductance">Inductance of the coil with those turns over the recipe's.</param>
/// <param name="HoldOhmsOutputDb">Output of the pickup with those turns against the recipe's, dB; of the coil alone, by its turns, when the
/// recipe has no strings.</param>
public sealed record SpoolDecision(
    double RecipeTurns,
    double RecipeOhm,
    Estimate HoldTurnsOhm,
    double HoldOhmsTurns,
    double HoldOhmsInductance,
    double HoldOhmsOutputDb
)
{
    private const int MostKept = 200;
    private static readonly ConcurrentDictionary<(CoilPlan Plan, Estimate OhmPerM), SpoolDecision> s_kept = new();

    /// <summary>Works both ways out for the coil that the batch winds; kept, since the winder's page asks again and again.</summary>
    /// <remarks>
    /// Fewer turns leave out the outermost, longest ones, so that slightly more turns are left than the ratio of the wires alone would say.
    /// </remarks>
    public static SpoolDecision For(CoilPlan plan, SpoolMeasure measure)
    {
        if (s_kept.Count > MostKept)
        {
            s_kept.Clear();
        }

        return s_kept.GetOrAdd((plan, measure.OhmPerM), key =>
            Of(SpoolChoice.Of(key.Plan.Pickup, [key.Plan.Index], key.OhmPerM), key.Plan.Index)
        );
    }

    private static SpoolDecision Of(SpoolChoice choice, int coil)
    {
        ComparisonLine henry = choice.HoldOhms.Line(Quantity.Inductance.KeyOfCoil(coil, choice.Nominal.Turns.Count))!;
        double turns = choice.Nominal.Turns[coil],
            held = choice.HoldOhms.Turns[coil];
        return new SpoolDecision(
            turns,
            choice.Nominal.CoilOhm[coil].Value,
            choice.HoldTurns.CoilOhm[coil],
            held,
            henry.Ratio!.Value.Value,
            choice.HoldOhms.OutputChangeDb ?? 20 * Math.Log10(held / turns)
        );
    }
}
