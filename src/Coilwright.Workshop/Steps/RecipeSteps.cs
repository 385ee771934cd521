using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Steps;

/// <summary>The steps of a recipe: its own where it names them, else the usual ones.</summary>
public static class RecipeSteps
{
    /// <summary>The steps in order, always from assembly to packing with a final test between.</summary>
    public static IReadOnlyList<StepPlan> Of(Recipe recipe)
    {
        IReadOnlyList<StepPlan> usual = UsualSteps.Of(recipe);
        return recipe.Steps.Count == 0 ? usual
            :
            [
                usual[0],
                .. recipe.Steps.Select(step => new StepPlan(step.Name, Time(step.Least), step.Most is { } most ? Time(most) : null, Time(step.Hold), step.HoldReason, Cautions(step, usual)) { Charge = step.Charge }),
                .. usual.TakeLast(2),
            ];
    }

    private static TimeSpan Time(Entry.Entered? entered) => entered is { IsKnown: true } known ? TimeSpan.FromSeconds(known.Si) : TimeSpan.Zero;

    /// <summary>Cautions of the usual step of that name; an own step of another name carries all that may apply.</summary>
    private static IReadOnlyList<string> Cautions(RecipeStep step, IReadOnlyList<StepPlan> usual) =>
        usual.FirstOrDefault(plan => plan.Name == step.Name)?.Cautions ?? (step.Charge is not null ? StepPlan.Magnets : step.Name) switch
        {
            "potting" => [StepCautions.Wax, StepCautions.Vapour, StepCautions.Hardener],
            StepPlan.Magnets => [StepCautions.Magnets],
            _ => [StepCautions.Vapour, StepCautions.Hardener],
        };
}
