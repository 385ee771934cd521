using Coilwright.Physics;
using Coilwright.Workshop.Batches;

namespace Coilwright.Workshop.Stock;

/// <summary>A spool that is off, against a recipe: hold the turns, or hold the ohms. SI units.</summary>
/// <param name="RecipeTurns">Turns of the recipe.</param>
/// <param name="RecipeOhm">Resistance at 20 °C that the recipe's own wire would give, Ω.</param>
/// <param name="HoldTurnsOhm">Resistance at 20 °C of the recipe's turns on this spool, Ω.</param>
/// <param name="HoldOhmsTurns">Turns of this spool that read as the recipe does.</param>
/// <param name="HoldOhmsInductance">Inductance of those turns over the recipe's: the square of the turns.</param>
/// <param name="HoldOhmsOutputDb">Output of those turns against the recipe's, dB.</param>
public sealed record SpoolDecision(double RecipeTurns, double RecipeOhm, Estimate HoldTurnsOhm, double HoldOhmsTurns, double HoldOhmsInductance, double HoldOhmsOutputDb)
{
    /// <summary>Works both ways out.</summary>
    /// <remarks>Fewer turns leave out the outermost, longest ones, so that slightly more turns are left than the ratio of the wires alone would say.</remarks>
    public static SpoolDecision For(CoilPlan plan, SpoolMeasure measure)
    {
        double turns = plan.SetUp.Turns, wireM = plan.SetUp.WireLength.Value, ohm = plan.SetUp.At20C.Expected.Value;
        double held = plan.TurnsOf(ohm / measure.OhmPerM.Value), ratio = held / turns;
        Estimate per = measure.OhmPerM;
        return new SpoolDecision(turns, ohm, new Estimate(per.Value * wireM, per.Low * wireM, per.High * wireM, Basis.Forecast), held, ratio * ratio, 20 * Math.Log10(ratio));
    }
}
