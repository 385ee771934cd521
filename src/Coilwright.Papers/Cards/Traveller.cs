using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Cards;

/// <summary>The paper that travels with a piece: its steps with times, holds, a line to sign, and cautions where the work can hurt.</summary>
public static class Traveller
{
    /// <summary>The sheet of the steps usual for a recipe.</summary>
    public static Sheet Of(Recipe recipe, SheetHeading heading)
    {
        List<SheetPart> parts = [new TextPart("Piece: ______________________     Batch: ______________________")];
        foreach (StepPlan step in UsualSteps.Of(recipe))
        {
            parts.Add(new StepPart(parts.Count, step.Name, [.. Lines(step)], step.Cautions));
        }

        parts.Add(new TextPart("Times that the recipe does not state are common practice; the product's data sheet goes before them."));
        return new Sheet("Traveller", recipe.Name, heading, parts, Sheet.CodeOf(recipe.Name));
    }

    private static IEnumerable<string> Lines(StepPlan step)
    {
        if (step.Least > TimeSpan.Zero)
        {
            yield return $"takes {Time(step.Least)} at least{(step.Most is { } most ? $", {Time(most)} at most" : "")}";
        }

        if (step.HoldAfter > TimeSpan.Zero)
        {
            yield return $"then hold for {Time(step.HoldAfter)}: {step.HoldReason}";
        }

        yield return "done at ______________ by ______________";
    }

    private static string Time(TimeSpan time) => time.TotalHours >= 2
        ? time.TotalHours.ToString("0.#", CultureInfo.InvariantCulture) + " h"
        : time.TotalMinutes.ToString("0.#", CultureInfo.InvariantCulture) + " min";
}
