using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.People;

/// <summary>Who has an account, and what they are. At least one owner stays.</summary>
public sealed class AccountService(IPeopleRecords records, ISecretHasher hasher, TimeProvider clock)
{
    private const string Members = "a name of the list";

    /// <summary>Everybody who may sign in, by name.</summary>
    public async Task<IReadOnlyList<AccountRecord>> PeopleAsync(CancellationToken cancel) =>
        [
            .. (await records.AccountsAsync(cancel).ConfigureAwait(false))
                .Where(one => one.LeftUtc is null)
                .OrderBy(one => one.NameKey, StringComparer.Ordinal),
        ];

    /// <summary>Makes an account.</summary>
    /// <param name="name">The name that records will carry.</param>
    /// <param name="role">What the person is; the first of a shop is its owner.</param>
    /// <param name="password">The password, or empty for one that is made up and told once.</param>
    /// <param name="mustChange">True when the person must choose another at the first sign-in.</param>
    /// <param name="by">Who invites.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<InvitedOutcome> InviteAsync(
        string name,
        string role,
        string password,
        bool mustChange,
        string by,
        CancellationToken cancel
    )
    {
        string said = string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        string chosen = password.Length == 0 ? SecretKey.CreatePassword() : password;
        List<Problem> problems = [.. TextLimit.Check([("person", said)]).Select(one => one with { Field = "name" })];
        if (said.Length == 0)
        {
            problems.Add(new Problem("name", "an account needs a name", null, "the name that stands in the records, 1 to 80 letters"));
        }

        Role? read = RoleRights.Read(role);
        if (read is null)
        {
            problems.Add(new Problem("role", $"\"{role}\" is no role", null, RoleRights.Words));
        }

        if (SecretRules.CheckPassword("password", chosen, said) is { } weak)
        {
            problems.Add(weak);
        }

        if (problems.Count > 0)
        {
            return new InvitedOutcome(problems, "");
        }

        string hash = hasher.Hash(chosen); // takes its time: before the unit of work
        IReadOnlyList<Problem> wrong = await records
            .ChangeAccountsAsync(all => Invite(all, said, read!.Value, hash, mustChange || password.Length == 0, by), cancel)
            .ConfigureAwait(false);
        return new InvitedOutcome(wrong, wrong.Count == 0 && password.Length == 0 ? chosen : "");
    }

    /// <summary>Gives a person another role; what they are signed in at asks them again.</summary>
    public Task<IReadOnlyList<Problem>> ChangeRoleAsync(string name, string role, string by, CancellationToken cancel) =>
        RoleRights.Read(role) is not { } read
            ? Task.FromResult<IReadOnlyList<Problem>>([new Problem("role", $"\"{role}\" is no role", null, RoleRights.Words)])
            : ChangeAsync(
                name,
                AccountAct.RoleChanged,
                RoleRights.Word(read),
                by,
                account => account with { Role = read, Stamp = Guid.NewGuid() },
                cancel
            );

    /// <summary>Ends an account: nobody signs in with it any more. What the person did keeps the name.</summary>
    public Task<IReadOnlyList<Problem>> RemoveAsync(string name, string by, CancellationToken cancel) =>
        ChangeAsync(
            name,
            AccountAct.Left,
            "",
            by,
            account => account with { LeftUtc = clock.GetUtcNow(), Stamp = Guid.NewGuid(), PinHash = "" },
            cancel
        );

    /// <summary>Sets a password; every session of the account is over.</summary>
    /// <param name="name">Whose.</param>
    /// <param name="password">The password, or empty for one that is made up and told once.</param>
    /// <param name="mustChange">True when the person must choose another at the next sign-in.</param>
    /// <param name="by">Who sets it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<InvitedOutcome> SetPasswordAsync(string name, string password, bool mustChange, string by, CancellationToken cancel)
    {
        string chosen = password.Length == 0 ? SecretKey.CreatePassword() : password;
        if (SecretRules.CheckPassword("password", chosen, name) is { } weak)
        {
            return new InvitedOutcome([weak], "");
        }

        string hash = hasher.Hash(chosen);
        IReadOnlyList<Problem> wrong = await ChangeAsync(
                name,
                AccountAct.PasswordSet,
                "",
                by,
                account =>
                    account with
                    {
                        PasswordHash = hash,
                        MustChange = mustChange || password.Length == 0,
                        Stamp = Guid.NewGuid(),
                        WrongPasswords = 0,
                        LockedUntilUtc = null,
                    },
                cancel
            )
            .ConfigureAwait(false);
        return new InvitedOutcome(wrong, wrong.Count == 0 && password.Length == 0 ? chosen : "");
    }

    /// <summary>Sets a person's PIN; empty takes it away.</summary>
    public Task<IReadOnlyList<Problem>> SetPinAsync(string name, string pin, string by, CancellationToken cancel)
    {
        if (pin.Length > 0 && SecretRules.CheckPin("pin", pin) is { } weak)
        {
            return Task.FromResult<IReadOnlyList<Problem>>([weak]);
        }

        string hash = pin.Length == 0 ? "" : hasher.Hash(pin);
        return ChangeAsync(
            name,
            pin.Length == 0 ? AccountAct.PinRemoved : AccountAct.PinSet,
            "",
            by,
            account => account with { PinHash = hash, WrongPins = 0 },
            cancel
        );
    }

    private async Task<IReadOnlyList<Problem>> ChangeAsync(
        string name,
        AccountAct act,
        string detail,
        string by,
        Func<AccountRecord, AccountRecord> change,
        CancellationToken cancel
    ) =>
        await records
            .ChangeAccountsAsync(
                all =>
                {
                    if (Find(all, name) is not { } account)
                    {
                        return Refuse(new Problem("name", $"nobody here is called \"{name}\"", null, Members));
                    }

                    AccountRecord changed = change(account);
                    bool isLastOwner =
                        account.Role == Role.Owner
                        && (changed.Role != Role.Owner || changed.LeftUtc is not null)
                        && all.Count(one => one is { Role: Role.Owner, LeftUtc: null }) == 1;
                    return isLastOwner
                        ? Refuse(new Problem("name", $"{account.Name} is the only owner", null, "make another person an owner first"))
                        : new AccountDecision<IReadOnlyList<Problem>>([changed], [Event(act, account.Name, detail, by)], []);
                },
                cancel
            )
            .ConfigureAwait(false);

    private AccountDecision<IReadOnlyList<Problem>> Invite(
        IReadOnlyList<AccountRecord> all,
        string name,
        Role role,
        string hash,
        bool mustChange,
        string by
    )
    {
        if (Find(all, name) is { } there)
        {
            return Refuse(new Problem("name", $"{there.Name} has an account already", null, "another name"));
        }

        if (role != Role.Owner && all.All(one => one.Role != Role.Owner || one.LeftUtc is not null))
        {
            return Refuse(new Problem("role", "the first account of a shop is its owner's", null, RoleRights.Word(Role.Owner)));
        }

        AccountRecord made = new()
        {
            Id = Guid.NewGuid(),
            Name = name,
            NameKey = NameKey.Of(name),
            Role = role,
            PasswordHash = hash,
            MustChange = mustChange,
            Stamp = Guid.NewGuid(),
            SinceUtc = clock.GetUtcNow(),
        };
        string who = by.Trim().Length > 0 ? by.Trim() : name;
        return new([made], [Event(AccountAct.Invited, name, RoleRights.Word(role), who)], []);
    }

    private AccountEventRecord Event(AccountAct act, string about, string detail, string by) =>
        new()
        {
            Id = Guid.NewGuid(),
            Act = act,
            About = about,
            Detail = detail,
            Person = by.Trim(),
            TimeUtc = clock.GetUtcNow(),
        };

    private static AccountRecord? Find(IReadOnlyList<AccountRecord> all, string name) =>
        all.FirstOrDefault(one => one.LeftUtc is null && one.NameKey == NameKey.Of(name));

    private static AccountDecision<IReadOnlyList<Problem>> Refuse(Problem problem) => new([], [], [problem]);
}
