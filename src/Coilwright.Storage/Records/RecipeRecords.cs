using Coilwright.Storage.Model;
using Coilwright.Workshop.Recipes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Recipes and their revisions.</summary>
internal sealed class RecipeRecords(ShopDatabase database) : IRecipeRecords
{
    public async Task<IReadOnlyList<RevisionRecord>> NewestAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        List<RevisionRecord> newest = await context
            .Revisions.AsNoTracking()
            .Where(row => row.Number == context.Revisions.Where(other => other.RecipeId == row.RecipeId).Max(other => other.Number))
            .ToListAsync(cancel);
        return [.. newest.OrderBy(row => row.RecipeName, StringComparer.OrdinalIgnoreCase).ThenBy(row => row.RecipeId)];
    }

    public async Task<IReadOnlyList<RevisionRecord>> RevisionsAsync(Guid recipeId, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Revisions.AsNoTracking().Where(row => row.RecipeId == recipeId).OrderBy(row => row.Number).ToListAsync(cancel);
    }

    public async Task<RevisionRecord?> FindRevisionAsync(Guid recipeId, int number, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Revisions.AsNoTracking().SingleOrDefaultAsync(row => row.RecipeId == recipeId && row.Number == number, cancel);
    }

    public async Task<bool> SaveRevisionAsync(RevisionRecord revision, int expectedNewest, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        RevisionRecord? newest = await context
            .Revisions.Where(row => row.RecipeId == revision.RecipeId)
            .OrderByDescending(row => row.Number)
            .FirstOrDefaultAsync(cancel);
        bool replaces = newest is { State: RevisionState.Draft } && revision.Number == newest.Number,
            adds = revision.Number == (newest?.Number ?? 0) + 1;
        if ((newest?.Number ?? 0) != expectedNewest || !(replaces || adds))
        {
            return false;
        }

        if (replaces)
        {
            context.Entry(newest!).CurrentValues.SetValues(revision);
        }
        else
        {
            context.Add(revision);
        }

        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }
}
