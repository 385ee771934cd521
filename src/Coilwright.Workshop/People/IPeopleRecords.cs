namespace Coilwright.Workshop.People;

/// <summary>What a store must do for people who sign in.</summary>
public interface IPeopleRecords
{
    /// <summary>Everybody who ever had an account.</summary>
    Task<IReadOnlyList<AccountRecord>> AccountsAsync(CancellationToken cancel);

    /// <summary>
    /// Changes accounts in one unit of work: nobody else changes one between what the decision saw and what it wrote.
    /// </summary>
    /// <param name="decide">Is given every account; answers what is written, and what it has to say.</param>
    /// <param name="cancel">Gives up.</param>
    Task<T> ChangeAccountsAsync<T>(Func<IReadOnlyList<AccountRecord>, AccountDecision<T>> decide, CancellationToken cancel);

    /// <summary>A session by the hash of its key; null when there is none.</summary>
    Task<SessionRecord?> FindSessionAsync(string keyHash, CancellationToken cancel);

    /// <summary>Sessions that were not ended by hand.</summary>
    Task<IReadOnlyList<SessionRecord>> SessionsAsync(CancellationToken cancel);

    /// <summary>Adds a session, or writes one anew.</summary>
    Task KeepSessionAsync(SessionRecord session, CancellationToken cancel);

    /// <summary>Every token that was made.</summary>
    Task<IReadOnlyList<TokenRecord>> TokensAsync(CancellationToken cancel);

    /// <summary>A token by the hash of its key; null when there is none.</summary>
    Task<TokenRecord?> FindTokenAsync(string keyHash, CancellationToken cancel);

    /// <summary>Adds a token, or writes one anew; false when another one of its name is in force.</summary>
    Task<bool> KeepTokenAsync(TokenRecord token, CancellationToken cancel);

    /// <summary>Adds a line to the record of who did what.</summary>
    Task AddEventAsync(AccountEventRecord happened, CancellationToken cancel);

    /// <summary>The newest lines of it, newest first.</summary>
    Task<IReadOnlyList<AccountEventRecord>> EventsAsync(int most, CancellationToken cancel);
}

/// <summary>What a decision about accounts writes, and answers.</summary>
/// <param name="Write">Accounts, new or changed.</param>
/// <param name="Events">What is said of it.</param>
/// <param name="Answer">What whoever asked is told.</param>
public sealed record AccountDecision<T>(IReadOnlyList<AccountRecord> Write, IReadOnlyList<AccountEventRecord> Events, T Answer);
