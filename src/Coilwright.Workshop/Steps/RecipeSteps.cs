using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Workshop.Steps;

/// <summary>The steps of a recipe: its own where it names them, else the usual ones.</summary>
public static class RecipeSteps
{
    /// <summary>The steps in order, always from assembly to packing with a final test between.</summary>
    public static IReadOnlyList<StepPlan> Of(Recipe recipe)
    {
        IReadOnlyList<StepPlan> usual = UsualSteps.Of(recipe);
        return recipe.Steps.Count == 0
            ? usual
            :
            [
                usual[0],
                .. recipe.Steps.Select(step => new StepPlan(
                    step.Name,
                    Time(step.Least),
                    step.Most is { } most ? Time(most) : null,
                    Time(step.Hold),
                    step.HoldReason,
                    CautionsOf(step, recipe)
                )
                {
                    Charge = step.Charge,
                }),
                .. usual.TakeLast(2),
            ];
    }

    private static TimeSpan Time(Entry.Entered? entered) =>
        entered is { IsKnown: true } known ? TimeSpan.FromSeconds(known.Si) : TimeSpan.Zero;

    private static IReadOnlyList<string> CautionsOf(RecipeStep step, Recipe recipe) =>
        Cautions.ForStep(step.Name, recipe.Potting?.Kind, step.Charge is not null);
}
