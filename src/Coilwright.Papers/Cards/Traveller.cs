using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Cards;

/// <summary>
/// The paper that travels with a piece: its steps with times, holds, a line to sign, and cautions where the work can hurt.
/// </summary>
public static class Traveller
{
    private const string Line = "______________________";

    /// <summary>A blank sheet of the steps usual for a recipe.</summary>
    public static Sheet Of(Recipe recipe, SheetHeading heading) => Of(recipe, heading, new TravellerFacts());

    /// <summary>The sheet of a piece.</summary>
    /// <param name="recipe">The recipe of its revision.</param>
    /// <param name="heading">Shop, revision letter, day.</param>
    /// <param name="facts">The piece, its steps, what is done and what holds it.</param>
    /// <exception cref="ArgumentException">The facts have problems: <see cref="TravellerFacts.Check"/> tells them all.</exception>
    public static Sheet Of(Recipe recipe, SheetHeading heading, TravellerFacts facts)
    {
        IReadOnlyList<StepPlan> plans = facts.Steps.Count > 0 ? facts.Steps : RecipeSteps.Of(recipe);
        if (facts.Check(plans) is { Count: > 0 } problems)
        {
            throw new ArgumentException(
                string.Join("; ", problems.Select(problem => $"{problem.Field}: {problem.Message}")),
                nameof(facts)
            );
        }

        List<SheetPart> parts = [new TextPart($"Piece: {Or(facts.Piece)}     Batch: {Or(facts.Batch)}"), .. Status(facts, plans)];
        parts.AddRange(
            plans.Select(
                (step, at) =>
                    new StepPart(
                        at + 1,
                        step.Name,
                        [.. Lines(step, facts), .. Charge(step, plans, facts)],
                        step.Cautions.Count > 0 ? [string.Join(' ', step.Cautions)] : []
                    )
            )
        );
        if (facts.Steps.Count == 0)
        {
            parts.Add(new TextPart("Times that the recipe does not state are common practice; the product's data sheet goes before them."));
        }

        return new Sheet("Traveller", recipe.Name, heading, parts, Sheet.CodeOf(facts.Piece.Length > 0 ? facts.Piece : recipe.Name));
    }

    private static IEnumerable<SheetPart> Status(TravellerFacts facts, IReadOnlyList<StepPlan> plans)
    {
        if (facts.NowUtc is not { } now)
        {
            yield break;
        }

        StepStatus standing = StepRules.Stand(plans, facts.Runs, facts.Holds, now, facts.Zone);
        yield return new FiguresPart(
            [
                new KeyFigure(
                    standing.State == StepState.Held ? "On hold" : "Stands",
                    standing.Words,
                    "when printed, " + ShopTime.Words(now, facts.Zone)
                ),
            ],
            1
        );
        foreach (
            Hold hold in StepRules
                .Running(plans, facts.Runs, facts.Holds, now)
                .Where(hold => hold != standing.HeldBy && (standing.State != StepState.Held || hold.Words(facts.Zone) != standing.Words))
        )
        {
            yield return new TextPart($"Hold: {hold.Words(facts.Zone)}");
        }
    }

    private static IEnumerable<string> Lines(StepPlan step, TravellerFacts facts)
    {
        bool least = step.Least > TimeSpan.Zero;
        if (least || step.Most is not null)
        {
            string atLeast = least ? $"{Time(step.Least)} at least" : "",
                atMost = step.Most is { } most ? $"{Time(most)} at most" : "";
            yield return "takes " + string.Join(", ", new[] { atLeast, atMost }.Where(part => part.Length > 0));
        }

        if (step.HoldAfter > TimeSpan.Zero)
        {
            yield return $"then hold for {Time(step.HoldAfter)}: {step.HoldReason}";
        }

        if (facts.Runs.FirstOrDefault(run => run.Step == step.Name) is not { } run)
        {
            yield return least ? "begun at __________, done at __________ by __________" : "done at ______________ by ______________";
            yield break;
        }

        string done = run.EndedUtc is { } ended ? ShopTime.Words(ended, facts.Zone) : "at __________ by __________";
        yield return $"begun {ShopTime.Words(run.BegunUtc, facts.Zone)}, done {done}";
        if (run.EndedUtc is null && least)
        {
            yield return "not before " + ShopTime.Words(run.BegunUtc + step.Least, facts.Zone);
        }

        if (run.EndedUtc is { } end && StepRules.HoldAfter(step, end) is { } hold)
        {
            yield return "hold: " + hold.Words(facts.Zone);
        }
    }

    /// <summary>What the magnets are to be charged to, and what they were charged to, or room to write it.</summary>
    private static IEnumerable<string> Charge(StepPlan step, IReadOnlyList<StepPlan> plans, TravellerFacts facts)
    {
        if (step.Charge is { } wanted)
        {
            yield return $"magnets wanted: "
                + $"{wanted.Level.Done}{(wanted.Tolerance is null ? "" : wanted.Words[wanted.Level.Words.Length..])}";
        }

        if (step.ChargesMagnets && (facts.Charge.Length == 0 || plans.Last(plan => plan.ChargesMagnets) == step))
        {
            yield return facts.Charge.Length > 0
                ? $"magnets: {facts.Charge}"
                : "magnets charged full ☐   or knocked down to ____________ (% of full, or G at ____ mm)   with ____________";
        }
    }

    private static string Or(string text) => text.Length > 0 ? text : Line;

    private static string Time(TimeSpan time) =>
        time.TotalHours >= 2
            ? time.TotalHours.ToString("0.#", CultureInfo.InvariantCulture) + " h"
            : time.TotalMinutes.ToString("0.#", CultureInfo.InvariantCulture) + " min";
}
