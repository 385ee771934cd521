using System.Collections.Frozen;

namespace Coilwright.Workshop.People;

/// <summary>Which role may do what: the one place where it stands.</summary>
public static class RoleRights
{
    private static readonly FrozenDictionary<Role, FrozenSet<Right>> s_rights = new Dictionary<Role, FrozenSet<Right>>
    {
        [Role.Winder] = Set(Right.Look, Right.Wind, Right.Finish, Right.Instrument),
        [Role.Tester] = Set(Right.Look, Right.Wind, Right.Finish, Right.Test, Right.Instrument),
        [Role.Engineer] = Set(Right.Look, Right.Wind, Right.Finish, Right.Test, Right.Stock, Right.Design, Right.Secrets, Right.Instrument),
        [Role.Office] = Set(Right.Look, Right.Deliver, Right.Stock),
        [Role.Owner] = Set(Enum.GetValues<Right>()),
        [Role.Instrument] = Set(Right.Instrument),
    }.ToFrozenDictionary();

    /// <summary>Roles that a person can have, in the order in which they are offered.</summary>
    public static IReadOnlyList<Role> OfPeople { get; } = [Role.Winder, Role.Tester, Role.Engineer, Role.Office, Role.Owner];

    /// <summary>What a role may do.</summary>
    public static IReadOnlySet<Right> Of(Role role) => s_rights[role];

    /// <summary>
    /// What a role may do at a tablet where its person came with a PIN: a few digits, read over a shoulder, do not open what only an owner
    /// may do.
    /// </summary>
    public static IReadOnlySet<Right> ByPin(Role role) => role == Role.Owner ? s_rights[Role.Engineer] : s_rights[role];

    /// <summary>The role as it is written and spoken.</summary>
    public static string Word(Role role) => role.ToString().ToLowerInvariant();

    /// <summary>A role of people by its word; null for no such word.</summary>
    public static Role? Read(string word) =>
        OfPeople.Cast<Role?>().FirstOrDefault(role => string.Equals(Word(role!.Value), word.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>The words of all roles that people have.</summary>
    public static string Words { get; } = string.Join(", ", OfPeople.Select(Word));

    private static FrozenSet<Right> Set(params Right[] rights) => rights.ToFrozenSet();
}
