using Coilwright.Physics;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.SetUp;

/// <summary>Which of a recipe's targets holds for a coil on the winder.</summary>
public static class CoilLimits
{
    /// <summary>The coil's own target of DC resistance; of a pickup with one coil, the pickup's. Null when the recipe sets none.</summary>
    public static Target? DcResistanceTarget(Recipe recipe, int coilIndex)
    {
        if (recipe.Coils[coilIndex].Targets.TryGetValue("dcResistance", out Target? own))
        {
            return own;
        }

        bool alone = recipe.Coils.Count == 1 || (recipe.Connection == Connection.Single && coilIndex == 0);
        return alone ? recipe.Targets.GetValueOrDefault("dcResistance") : null;
    }
}
