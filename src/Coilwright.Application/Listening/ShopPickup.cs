using Coilwright.Application.Curves;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Listening;

/// <summary>A recipe of the shop as a pickup that sounds.</summary>
internal static class ShopPickup
{
    /// <summary>The pickup with nothing on it, or why it cannot be forecast.</summary>
    /// <param name="name">What the recipe is called.</param>
    /// <param name="json">The recipe's text.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="field">The field that a problem belongs to.</param>
    /// <param name="cancel">Stops it.</param>
    public static ReadOutcome<ResponseSource> Of(string name, string json, KnownParts parts, string field, CancellationToken cancel)
    {
        ReadOutcome<Recipe> recipe = RecipeReader.Read(json);
        if (recipe.Value is { } read)
        {
            return new ReadOutcome<ResponseSource>(ResponseSource.Of(parts.Fill(read), null, cancel), []);
        }

        string why = recipe.Problems.Count > 0 ? recipe.Problems[0].Message : "it does not read";
        return new ReadOutcome<ResponseSource>(null, [new Problem(field, $"{name} cannot be forecast yet: {why}")]);
    }
}
