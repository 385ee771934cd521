namespace Coilwright.Workshop.Learning;

/// <summary>What a store must do for what the shop learns.</summary>
public interface ILearningRecords
{
    /// <summary>Every record in order of entry.</summary>
    Task<IReadOnlyList<LearningRecord>> AllAsync(CancellationToken cancel);

    /// <summary>
    /// Adds a record. False when its number was given meanwhile, or, for an acceptance or refusal, the set was decided meanwhile: nothing
    /// was added.
    /// </summary>
    Task<bool> AddAsync(LearningRecord record, CancellationToken cancel);
}
