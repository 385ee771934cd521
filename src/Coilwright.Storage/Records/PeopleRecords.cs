using Coilwright.Storage.Model;
using Coilwright.Workshop.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>People who sign in.</summary>
internal sealed class PeopleRecords(ShopDatabase database) : IPeopleRecords
{
    public async Task<IReadOnlyList<AccountRecord>> AccountsAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Accounts.AsNoTracking().ToListAsync(cancel);
    }

    public async Task<T> ChangeAccountsAsync<T>(Func<IReadOnlyList<AccountRecord>, AccountDecision<T>> decide, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        IReadOnlyList<AccountRecord> all = await context.Accounts.AsNoTracking().ToListAsync(cancel);
        AccountDecision<T> decision = decide(all);
        foreach (AccountRecord account in decision.Write)
        {
            context.Entry(account).State = all.Any(one => one.Id == account.Id) ? EntityState.Modified : EntityState.Added;
        }

        context.AddRange(decision.Events);
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return decision.Answer;
    }

    public async Task<SessionRecord?> FindSessionAsync(string keyHash, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Sessions.AsNoTracking().FirstOrDefaultAsync(row => row.KeyHash == keyHash, cancel);
    }

    public async Task<IReadOnlyList<SessionRecord>> SessionsAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Sessions.AsNoTracking().Where(row => row.EndedUtc == null).ToListAsync(cancel);
    }

    public async Task KeepSessionAsync(SessionRecord session, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        SessionRecord? there = await context.Sessions.AsNoTracking().FirstOrDefaultAsync(row => row.Id == session.Id, cancel);
        if (there?.EndedUtc is not null)
        {
            return; // one that was ended meanwhile stays ended
        }

        context.Entry(session).State = there is null ? EntityState.Added : EntityState.Modified;
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
    }

    public async Task<IReadOnlyList<TokenRecord>> TokensAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Tokens.AsNoTracking().ToListAsync(cancel);
    }

    public async Task<TokenRecord?> FindTokenAsync(string keyHash, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Tokens.AsNoTracking().FirstOrDefaultAsync(row => row.KeyHash == keyHash, cancel);
    }

    public async Task<bool> KeepTokenAsync(TokenRecord token, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        bool isNew = !await context.Tokens.AnyAsync(row => row.Id == token.Id, cancel);
        if (isNew && await context.Tokens.AnyAsync(row => row.NameKey == token.NameKey && row.EndedUtc == null, cancel))
        {
            return false;
        }

        context.Entry(token).State = isNew ? EntityState.Added : EntityState.Modified;
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }

    public Task AddEventAsync(AccountEventRecord happened, CancellationToken cancel) =>
        database.AddOnceAsync(happened, row => row.Id == happened.Id, cancel);

    public async Task<IReadOnlyList<AccountEventRecord>> EventsAsync(int most, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .AccountEvents.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .Take(most)
            .ToListAsync(cancel);
    }
}
