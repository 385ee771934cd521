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
        List<StepPlan> steps = [Step("assembly", [Cautions.EndFume])];
        if (ChargeRule.HasMagnets(recipe))
        {
            steps.Add(Step(StepPlan.Magnets, [StepCautions.Magnets]));
        }

        if (recipe.Potting is { } potting && potting.Kind is not ("none" or "air"))
        {
            TimeSpan least = potting.Time is { Si: > 0 } time ? TimeSpan.FromSeconds(time.Si) : TimeSpan.FromMinutes(10);
            bool wax = potting.Kind is "wax" or "paraffin" or "beeswax";
            steps.Add(new StepPlan("potting", least, least + TimeSpan.FromHours(1), wax ? TimeSpan.FromMinutes(30) : TimeSpan.FromHours(24), wax ? "wax sets and cools" : $"{potting.Kind} cures",
                wax ? [StepCautions.Wax] : [StepCautions.Vapour, StepCautions.Hardener]));
        }

        steps.Add(new StepPlan("marking", TimeSpan.Zero, null, TimeSpan.FromHours(24), "ink cures", [StepCautions.Vapour, StepCautions.Hardener]));
        steps.Add(Step("final test", []));
        steps.Add(Step("packing", [StepCautions.Magnets]));
        return steps;
    }

    private static StepPlan Step(string name, IReadOnlyList<string> cautions) => new(name, TimeSpan.Zero, null, TimeSpan.Zero, "", cautions);
}
