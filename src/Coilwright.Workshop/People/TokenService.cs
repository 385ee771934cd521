using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.People;

/// <summary>Keys for meters, counters and programs.</summary>
public sealed class TokenService(IPeopleRecords records, TimeProvider clock)
{
    /// <summary>What a token may be for: an instrument, or a program that does what a person of that role does.</summary>
    public static IReadOnlyList<Role> Roles { get; } = [Role.Instrument, Role.Winder, Role.Tester, Role.Engineer];

    private const int MostDays = 3650;

    /// <summary>Tokens that are in force, by name.</summary>
    public async Task<IReadOnlyList<TokenRecord>> ListAsync(CancellationToken cancel) =>
        [
            .. (await records.TokensAsync(cancel).ConfigureAwait(false))
                .Where(one => IsInForce(one, clock.GetUtcNow()))
                .OrderBy(one => one.NameKey, StringComparer.Ordinal),
        ];

    /// <summary>Makes a token; its key is told once.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="role">What it may do.</param>
    /// <param name="days">Days until it ends by itself; empty for never.</param>
    /// <param name="by">Who makes it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<KeyOutcome> MakeAsync(string name, string role, string days, string by, CancellationToken cancel)
    {
        string said = string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        List<Problem> problems = [.. TextLimit.Check([("person", said)]).Select(one => one with { Field = "token-name" })];
        if (said.Length == 0)
        {
            problems.Add(new Problem("token-name", "a token needs a name", null, "what it is for, for example Bench 2 meter"));
        }

        Role? read = Roles
            .Cast<Role?>()
            .FirstOrDefault(one => string.Equals(RoleRights.Word(one!.Value), role.Trim(), StringComparison.OrdinalIgnoreCase));
        if (read is null)
        {
            problems.Add(
                new Problem("token-role", $"\"{role}\" is nothing a token is for", null, string.Join(", ", Roles.Select(RoleRights.Word)))
            );
        }

        bool ends = days.Trim().Length > 0;
        int count = 0;
        if (ends && !CountParser.TryParse(days, 1, MostDays, out count, out string why))
        {
            string allowed = $"{CountParser.Range(1, MostDays)} days, or nothing for never";
            problems.Add(new Problem("token-days", why, null, allowed));
        }

        if (problems.Count > 0)
        {
            return new KeyOutcome(problems, "");
        }

        string key = SecretKey.Create();
        DateTimeOffset now = clock.GetUtcNow();
        TokenRecord token = new()
        {
            Id = Guid.NewGuid(),
            Name = said,
            NameKey = NameKey.Of(said),
            KeyHash = SecretKey.HashOf(key),
            Role = read!.Value,
            MadeUtc = now,
            UntilUtc = ends ? now + TimeSpan.FromDays(count) : null,
            Person = by.Trim(),
        };
        if (!await records.KeepTokenAsync(token, cancel).ConfigureAwait(false))
        {
            return KeyOutcome.Refused(
                new Problem("token-name", $"there is a token \"{said}\" already", null, "another name, or end that one first")
            );
        }

        await SayAsync(AccountAct.TokenMade, said, RoleRights.Word(read.Value), by, cancel).ConfigureAwait(false);
        return new KeyOutcome([], key);
    }

    /// <summary>Ends a token.</summary>
    public async Task<IReadOnlyList<Problem>> EndAsync(string name, string by, CancellationToken cancel)
    {
        if ((await ListAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one => one.NameKey == NameKey.Of(name)) is not { } token)
        {
            return [new Problem("token-name", $"there is no token \"{name}\"", null, "a name of the list")];
        }

        await records.KeepTokenAsync(token with { EndedUtc = clock.GetUtcNow() }, cancel).ConfigureAwait(false);
        await SayAsync(AccountAct.TokenEnded, token.Name, "", by, cancel).ConfigureAwait(false);
        return [];
    }

    /// <summary>Who stands behind a token's key; null when it opens nothing.</summary>
    public async Task<SignedIn?> WhoAsync(string key, CancellationToken cancel) =>
        await records.FindTokenAsync(SecretKey.HashOf(key), cancel).ConfigureAwait(false) is { } token
        && IsInForce(token, clock.GetUtcNow())
            ? new SignedIn(token.Name, token.Role, RoleRights.Of(token.Role))
            : null;

    private static bool IsInForce(TokenRecord token, DateTimeOffset now) => token.EndedUtc is null && !(token.UntilUtc <= now);

    private Task SayAsync(AccountAct act, string about, string detail, string by, CancellationToken cancel) =>
        records.AddEventAsync(
            new AccountEventRecord
            {
                Id = Guid.NewGuid(),
                Act = act,
                About = about,
                Detail = detail,
                Person = by.Trim(),
                TimeUtc = clock.GetUtcNow(),
            },
            cancel
        );
}
