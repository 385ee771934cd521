namespace Coilwright.Workshop.Recipes;

/// <summary>What a store must do for recipes.</summary>
public interface IRecipeRecords
{
    /// <summary>Newest revision of every recipe, by name.</summary>
    Task<IReadOnlyList<RevisionRecord>> NewestAsync(CancellationToken cancel);

    /// <summary>Revisions of one recipe in order.</summary>
    Task<IReadOnlyList<RevisionRecord>> RevisionsAsync(Guid recipeId, CancellationToken cancel);

    /// <summary>One revision; null when there is none of that number.</summary>
    Task<RevisionRecord?> FindRevisionAsync(Guid recipeId, int number, CancellationToken cancel);

    /// <summary>
    /// Adds a revision or replaces a draft; refuses (false) to touch a released one, or to write when the newest revision is not <paramref
    /// name="expectedNewest"/>.
    /// </summary>
    Task<bool> SaveRevisionAsync(RevisionRecord revision, int expectedNewest, CancellationToken cancel);
}
