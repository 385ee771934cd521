using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Secrets;

/// <summary>Which recipes are the shop's secrets.</summary>
public sealed class SecretRecipeService(ISecretRecords records, IRecipeRecords recipes, TimeProvider clock)
{
    /// <summary>Recipes that are secret now.</summary>
    public Task<IReadOnlySet<Guid>> RecipesAsync(CancellationToken cancel) => records.RecipesAsync(cancel);

    /// <summary>Marks a recipe as secret, or takes the mark away.</summary>
    /// <param name="id">The entry's own id.</param>
    /// <param name="recipeId">The recipe.</param>
    /// <param name="isSecret">Whether it is a secret from now on.</param>
    /// <param name="reason">Why; may stay empty.</param>
    /// <param name="person">Who.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> MarkAsync(
        Guid id,
        Guid recipeId,
        bool isSecret,
        string reason,
        string person,
        CancellationToken cancel
    )
    {
        Problem[] problems = [.. TextLimit.Check([("reason", reason), ("person", person)])];
        if (problems.Length == 0 && (await recipes.RevisionsAsync(recipeId, cancel).ConfigureAwait(false)).Count == 0)
        {
            problems = [new Problem("recipe", "there is no such recipe")];
        }

        if (problems.Length == 0)
        {
            await records
                .AddAsync(
                    new SecretMarkRecord
                    {
                        Id = id,
                        RecipeId = recipeId,
                        IsSecret = isSecret,
                        Reason = reason.Trim(),
                        Person = person.Trim(),
                        TimeUtc = clock.GetUtcNow(),
                    },
                    cancel
                )
                .ConfigureAwait(false);
        }

        return problems;
    }
}
