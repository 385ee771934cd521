using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Magnets;

/// <summary>Which way a recipe's poles stand.</summary>
internal static class RecipePoles
{
    /// <summary>+1 when every pole is north up, −1 when every one is south up, 0 when the recipe does not say or has both.</summary>
    public static int NorthUp(Recipe recipe)
    {
        int[] signs = [.. recipe.Coils.SelectMany(coil => coil.Poles).Select(pole => pole.NorthUp).Distinct()];
        return signs.Length == 1 ? signs[0] : 0;
    }
}
