using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.People;

/// <summary>Signs people in and out, at a browser of their own or at a tablet that many share.</summary>
public sealed class SignInService(IPeopleRecords records, ISecretHasher hasher, TimeProvider clock)
{
    /// <summary>So many wrong passwords, or wrong PINs, in a row are let pass.</summary>
    public const int MostWrong = 5;

    /// <summary>How long no password is tried after that.</summary>
    public static readonly TimeSpan Lock = TimeSpan.FromMinutes(15);

    /// <summary>A session that nobody used for so long is over; and every session after so many days.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromHours(12),
        Longest = TimeSpan.FromDays(7);

    /// <summary>Whoever came with a PIN and did nothing for so long has gone: the tablet asks who is there.</summary>
    public static readonly TimeSpan PinIdle = TimeSpan.FromMinutes(30);

    /// <summary>How exactly it is known when a session was last used: a page is not to cost a write.</summary>
    private static readonly TimeSpan s_glance = TimeSpan.FromMinutes(2);

    private static readonly Problem s_wrong = new(
        "password",
        "this name and this password do not belong together",
        null,
        "as the shop's owner set them; an owner can set a new password"
    );

    /// <summary>True when the shop has accounts: nobody does anything without one then.</summary>
    public async Task<bool> IsNeededAsync(CancellationToken cancel) =>
        (await records.AccountsAsync(cancel).ConfigureAwait(false)).Any(one => one.LeftUtc is null);

    /// <summary>Signs a person in with a password.</summary>
    /// <param name="name">The name.</param>
    /// <param name="password">The password.</param>
    /// <param name="device">What the browser calls itself.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<KeyOutcome> SignInAsync(string name, string password, string device, CancellationToken cancel)
    {
        DateTimeOffset now = clock.GetUtcNow();
        AccountRecord? account = await FindAsync(name, cancel).ConfigureAwait(false);
        if (account?.LockedUntilUtc > now)
        {
            int minutes = (int)Math.Ceiling((account.LockedUntilUtc.Value - now).TotalMinutes);
            string wait = string.Create(CultureInfo.InvariantCulture, $"wait {minutes} min, or let an owner set a new password");
            return KeyOutcome.Refused(new Problem("password", "too many wrong passwords were tried for this name", null, wait));
        }

        // a name that nobody has takes as long as one that somebody has, and is answered alike
        bool matches = hasher.Matches(account?.PasswordHash ?? Decoy, password.Length > SecretRules.MostPassword ? "" : password);
        if (account is null || !matches)
        {
            if (account is not null)
            {
                await MissAsync(account.Id, now, cancel).ConfigureAwait(false);
            }

            return KeyOutcome.Refused(s_wrong);
        }

        string key = SecretKey.Create();
        bool stands = await records
            .ChangeAccountsAsync(
                all =>
                    all.FirstOrDefault(one => one.Id == account.Id && one.Stamp == account.Stamp) is { } still
                        ? new AccountDecision<bool>(
                            [still with { WrongPasswords = 0, LockedUntilUtc = null, WrongPins = 0 }],
                            [Event(AccountAct.SignedIn, still.Name, Short(device), still.Name, now)],
                            true
                        )
                        : new AccountDecision<bool>([], [], false),
                cancel
            )
            .ConfigureAwait(false);
        if (!stands)
        {
            return KeyOutcome.Refused(s_wrong);
        }

        SessionRecord session = new()
        {
            Id = Guid.NewGuid(),
            KeyHash = SecretKey.HashOf(key),
            AccountId = account.Id,
            Stamp = account.Stamp,
            Device = Short(device),
            BegunUtc = now,
            SeenUtc = now,
        };
        await records.KeepSessionAsync(session, cancel).ConfigureAwait(false);
        return new KeyOutcome([], key);
    }

    /// <summary>Lets another person stand at a tablet that is signed in.</summary>
    /// <param name="key">The tablet's key.</param>
    /// <param name="name">Who.</param>
    /// <param name="pin">Their PIN.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> SwitchAsync(string key, string name, string pin, CancellationToken cancel)
    {
        DateTimeOffset now = clock.GetUtcNow();
        if (await SessionAsync(key, now, cancel).ConfigureAwait(false) is not { } session)
        {
            return [new Problem("pin", "this tablet is not signed in", null, "sign in with a password first")];
        }

        AccountRecord? account = await FindAsync(name, cancel).ConfigureAwait(false);
        if (account is null || account.PinHash.Length == 0)
        {
            return [new Problem("name", $"\"{name}\" has no PIN", null, "a name of the list, or sign in with a password")];
        }

        if (account.WrongPins >= MostWrong)
        {
            return [new Problem("pin", "too many wrong PINs were tried for this name", null, "sign in with the password once")];
        }

        if (!hasher.Matches(account.PinHash, pin.Length > SecretRules.MostPin ? "" : pin))
        {
            await records.ChangeAccountsAsync(all => MissPin(all, account.Id, now), cancel).ConfigureAwait(false);
            return [new Problem("pin", "this is not the PIN", null, "four to eight digits, as set under My account")];
        }

        await records
            .ChangeAccountsAsync(
                all => new AccountDecision<bool>(
                    [.. all.Where(one => one.Id == account.Id && one.WrongPins > 0).Select(one => one with { WrongPins = 0 })],
                    [],
                    true
                ),
                cancel
            )
            .ConfigureAwait(false);
        await records
            .KeepSessionAsync(session with { PinAccountId = account.Id, PinStamp = account.Stamp, SeenUtc = now }, cancel)
            .ConfigureAwait(false);
        return [];
    }

    /// <summary>Who stands behind a browser's key; null when it opens nothing.</summary>
    public async Task<SignedIn?> WhoAsync(string key, CancellationToken cancel)
    {
        DateTimeOffset now = clock.GetUtcNow();
        if (await records.FindSessionAsync(SecretKey.HashOf(key), cancel).ConfigureAwait(false) is not { } session || IsOver(session, now))
        {
            return null;
        }

        IReadOnlyList<AccountRecord> all = await records.AccountsAsync(cancel).ConfigureAwait(false);
        if (all.FirstOrDefault(one => one.Id == session.AccountId) is not { LeftUtc: null } holder || holder.Stamp != session.Stamp)
        {
            return null;
        }

        AccountRecord? visitor = all.FirstOrDefault(one => one.Id == session.PinAccountId);
        bool isGone = visitor is not null && (visitor.Stamp != session.PinStamp || visitor.LeftUtc is not null);
        bool asks = visitor is not null && (isGone || now - session.SeenUtc > PinIdle);
        if (!asks && now - session.SeenUtc > s_glance)
        {
            await records.KeepSessionAsync(session with { SeenUtc = now }, cancel).ConfigureAwait(false);
        }

        AccountRecord person = visitor ?? holder;
        return new SignedIn(person.Name, person.Role, RightsOf(person, visitor is not null, asks))
        {
            AccountId = person.Id,
            SessionId = session.Id,
            ByPin = visitor is not null,
            MustChange = person.MustChange && visitor is null,
            AsksWho = asks,
        };
    }

    /// <summary>Ends a session by its key.</summary>
    public async Task SignOutAsync(string key, CancellationToken cancel)
    {
        if (await records.FindSessionAsync(SecretKey.HashOf(key), cancel).ConfigureAwait(false) is { EndedUtc: null } session)
        {
            await records.KeepSessionAsync(session with { EndedUtc = clock.GetUtcNow() }, cancel).ConfigureAwait(false);
        }
    }

    /// <summary>Sessions that last, newest use first.</summary>
    public async Task<IReadOnlyList<SessionRecord>> SessionsAsync(CancellationToken cancel)
    {
        DateTimeOffset now = clock.GetUtcNow();
        Dictionary<Guid, Guid> stamps = (await records.AccountsAsync(cancel).ConfigureAwait(false)).ToDictionary(
            one => one.Id,
            one => one.Stamp
        );
        return
        [
            .. (await records.SessionsAsync(cancel).ConfigureAwait(false))
                .Where(one => !IsOver(one, now) && stamps.TryGetValue(one.AccountId, out Guid stamp) && stamp == one.Stamp)
                .OrderByDescending(one => one.SeenUtc),
        ];
    }

    /// <summary>Ends a session that lasts, wherever it is.</summary>
    public async Task<IReadOnlyList<Problem>> EndAsync(Guid id, string by, CancellationToken cancel)
    {
        if ((await SessionsAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one => one.Id == id) is not { } session)
        {
            return [new Problem("session", "this session is over already")];
        }

        DateTimeOffset now = clock.GetUtcNow();
        await records.KeepSessionAsync(session with { EndedUtc = now }, cancel).ConfigureAwait(false);
        await records.AddEventAsync(Event(AccountAct.SessionEnded, session.Device, "", by, now), cancel).ConfigureAwait(false);
        return [];
    }

    /// <summary>Something that no password matches, checked where there is no account.</summary>
    private string Decoy => field ??= hasher.Hash(SecretKey.Create());

    private static IReadOnlySet<Right> RightsOf(AccountRecord person, bool byPin, bool asksWho)
    {
        if (asksWho || (person.MustChange && !byPin))
        {
            return new HashSet<Right>();
        }

        return byPin ? RoleRights.ByPin(person.Role) : RoleRights.Of(person.Role);
    }

    private async Task<AccountRecord?> FindAsync(string name, CancellationToken cancel)
    {
        string key = NameKey.Of(name);
        return (await records.AccountsAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one => one.LeftUtc is null && one.NameKey == key);
    }

    private async Task<SessionRecord?> SessionAsync(string key, DateTimeOffset now, CancellationToken cancel) =>
        await records.FindSessionAsync(SecretKey.HashOf(key), cancel).ConfigureAwait(false) is { } session
        && !IsOver(session, now)
        && (await records.AccountsAsync(cancel).ConfigureAwait(false)).Any(one =>
            one.Id == session.AccountId && one.Stamp == session.Stamp && one is { LeftUtc: null, MustChange: false }
        )
            ? session
            : null;

    private static bool IsOver(SessionRecord session, DateTimeOffset now) =>
        session.EndedUtc is not null || now - session.SeenUtc > Idle || now - session.BegunUtc > Longest;

    private async Task MissAsync(Guid id, DateTimeOffset now, CancellationToken cancel) =>
        await records.ChangeAccountsAsync(all => MissPassword(all, id, now), cancel).ConfigureAwait(false);

    private static AccountDecision<bool> MissPassword(IReadOnlyList<AccountRecord> all, Guid id, DateTimeOffset now)
    {
        AccountRecord account = all.First(one => one.Id == id);
        int wrong = account.WrongPasswords + 1;
        return wrong < MostWrong
            ? new([account with { WrongPasswords = wrong }], [], true)
            : new(
                [account with { WrongPasswords = 0, LockedUntilUtc = now + Lock }],
                [Event(AccountAct.Locked, account.Name, "", "", now)],
                true
            );
    }

    private static AccountDecision<bool> MissPin(IReadOnlyList<AccountRecord> all, Guid id, DateTimeOffset now)
    {
        AccountRecord account = all.First(one => one.Id == id);
        AccountRecord missed = account with { WrongPins = account.WrongPins + 1 };
        return new([missed], missed.WrongPins == MostWrong ? [Event(AccountAct.PinLocked, account.Name, "", "", now)] : [], true);
    }

    private static string Short(string device)
    {
        string plain = new([.. device.Where(letter => !char.IsControl(letter))]);
        return plain.Length > 120 ? plain[..120] : plain;
    }

    private static AccountEventRecord Event(AccountAct act, string about, string detail, string by, DateTimeOffset now) =>
        new()
        {
            Id = Guid.NewGuid(),
            Act = act,
            About = about,
            Detail = detail,
            Person = by,
            TimeUtc = now,
        };
}
