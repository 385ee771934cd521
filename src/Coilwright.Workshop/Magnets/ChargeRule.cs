using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Magnets;

/// <summary>Charge against what is wanted.</summary>
public static class ChargeRule
{
    /// <summary>Two levels that differ by less are the same: rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>True when a recipe has anything to charge; parts that could not be read are passed over.</summary>
    public static bool HasMagnets(Recipe recipe) =>
        recipe.Magnets.Count > 0 || recipe.Coils.Any(coil => coil?.Poles.Any(pole => pole?.NorthUp is not (null or 0)) == true);

    /// <summary>What the recipe of a piece asks of its magnets last; null for nothing.</summary>
    public static RequiredCharge? WantedOf(PieceSnapshot life) => life.Plans.LastOrDefault(plan => plan.Charge is not null)?.Charge;

    /// <summary>The first step of a piece that charges magnets and is not done; empty when none waits.</summary>
    public static string WaitingStep(PieceSnapshot life) =>
        life.Plans.FirstOrDefault(plan =>
            plan.ChargesMagnets && !life.History.Runs.Any(run => run.Step == plan.Name && run.EndedUtc is not null)
        )?.Name
        ?? "";

    /// <summary>Why an entered level does not meet the step; null when it does, or when the step asks for none.</summary>
    /// <param name="serial">The piece.</param>
    /// <param name="wanted">What the recipe's step asks for; null for nothing.</param>
    /// <param name="level">What was entered; null for nothing.</param>
    /// <param name="rules">The shop's tolerance, where the recipe states none.</param>
    public static Problem? Refuse(string serial, RequiredCharge? wanted, MagnetLevel? level, ShopRules rules)
    {
        if (wanted is null)
        {
            return null;
        }

        if (level is null)
        {
            return new Problem("charge", $"{serial}: charged to what? Its recipe asks for {wanted.Words}", null, wanted.Level.Words);
        }

        if (!level.IsLike(wanted.Level))
        {
            return new Problem(
                "charge",
                $"{serial}: its recipe asks for {wanted.Words}, which {level.Words} cannot be held against",
                level.Words,
                wanted.Level.Share is null
                    ? "the field over the poles, read at "
                        + QuantityParser.FormatIn(wanted.Level.JigM ?? MagnetLevel.UsualJigM, QuantityKind.Length, "mm")
                    : "full, or a share of full in %"
            );
        }

        double above = level.Above(wanted.Level),
            tolerance = wanted.Tolerance ?? rules.ChargeTolerance ?? 0;
        if (Math.Abs(above) <= tolerance + Rounding)
        {
            return null;
        }

        string ofRules = wanted.Tolerance is null ? $" ({OfRules(rules)})" : "";
        return new Problem(
            "charge",
            $"{serial}: its recipe asks for {wanted.Words}{ofRules}; {Remedy(above)}, or hold the piece with a reason",
            level.Words,
            wanted.Words
        );
    }

    /// <summary>Field over the poles at a final test against the charge; null when there is nothing to tell.</summary>
    /// <param name="life">The piece.</param>
    /// <param name="poles">What was read; null when it was not.</param>
    /// <param name="rules">The shop's tolerance, where the recipe states none; without any it is shown and not judged.</param>
    public static TestOutcome? AtTest(PieceSnapshot life, PoleReading? poles, ShopRules rules)
    {
        RequiredCharge? wanted = WantedOf(life);
        if (
            poles is not { PolesT.Count: > 0 }
            || (wanted?.Level is { FieldT: not null } asked ? asked : MagnetCharge.Of(life)?.Level) is not { FieldT: { } } level
        )
        {
            return null;
        }

        if (!level.IsSameJig(poles.JigDistanceM))
        {
            return new TestOutcome(
                "charge",
                TestResult.Pass,
                $"charge {level.Words}: not held against poles read at "
                    + $"{QuantityParser.FormatIn(poles.JigDistanceM, QuantityKind.Length, "mm")}"
            );
        }

        double mean = poles.PolesT.Average(Math.Abs),
            above = mean / level.FieldT.Value - 1;
        double? tolerance = wanted?.Level == level ? wanted.Tolerance ?? rules.ChargeTolerance : rules.ChargeTolerance;
        string words = string.Create(
            CultureInfo.InvariantCulture,
            $"mean of the poles {QuantityParser.FormatIn(mean, QuantityKind.FluxDensity, "G")}, "
                + $"{(above < 0 ? "−" : "+")}{Math.Abs(100 * above):0.0} % against the charge "
                + $"{level.Words}{(tolerance is { } part ? $", allowed ±{100 * part:0.##} %" : ", shown only: no tolerance is stated")}"
        );
        return new TestOutcome(
            QuantityKey.Charge,
            tolerance is { } most && Math.Abs(above) > most ? TestResult.Fail : TestResult.Pass,
            words,
            above
        );
    }

    private static string OfRules(ShopRules rules) =>
        rules.ChargeTolerance is { } part
            ? string.Create(CultureInfo.InvariantCulture, $"the shop's rules allow ±{100 * part:0.##} %")
            : "neither the recipe's step nor the shop's rules state a tolerance, so only the same level passes";

    private static string Remedy(double above) =>
        above > 0 ? "knock it down further and read it again" : "charge it full, knock it down anew and read it again";
}
