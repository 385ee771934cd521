namespace Coilwright.Workshop.Secrets;

/// <summary>What a store must do for secret recipes.</summary>
public interface ISecretRecords
{
    /// <summary>Recipes that are secret now.</summary>
    Task<IReadOnlySet<Guid>> RecipesAsync(CancellationToken cancel);

    /// <summary>Adds a mark, once.</summary>
    Task AddAsync(SecretMarkRecord mark, CancellationToken cancel);
}
