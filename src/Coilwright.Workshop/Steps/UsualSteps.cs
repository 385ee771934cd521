using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Workshop.Steps;

/// <summary>The steps of a recipe that names none of its own. Times are common practice, no source; a shop states its own.</summary>
public static class UsualSteps
{
    /// <summary>The steps in order.</summary>
    public static IReadOnlyList<StepPlan> Of(Recipe recipe)
    {
        List<StepPlan> steps = [Step("assembly", recipe)];
        if (ChargeRule.HasMagnets(recipe))
        {
            steps.Add(Step(StepPlan.Magnets, recipe));
        }

        if (recipe.Potting is { } potting && potting.Kind is not ("none" or "air"))
        {
            TimeSpan least = potting.Time is { Si: > 0 } time ? TimeSpan.FromSeconds(time.Si) : TimeSpan.FromMinutes(10);
            bool wax = potting.Kind is "wax" or "paraffin" or "beeswax";
            steps.Add(
                Step("potting", recipe) with
                {
                    Least = least,
                    Most = least + TimeSpan.FromHours(1),
                    HoldAfter = wax ? TimeSpan.FromMinutes(30) : TimeSpan.FromHours(24),
                    HoldReason = wax ? "wax sets and cools" : $"{potting.Kind} cures",
                }
            );
        }

        steps.Add(Step("marking", recipe) with { HoldAfter = TimeSpan.FromHours(24), HoldReason = "ink cures" });
        steps.Add(Step("final test", recipe));
        steps.Add(Step("packing", recipe));
        return steps;
    }

    private static StepPlan Step(string name, Recipe recipe) =>
        new(name, TimeSpan.Zero, null, TimeSpan.Zero, "", Cautions.ForStep(name, recipe.Potting?.Kind, charges: false));
}
