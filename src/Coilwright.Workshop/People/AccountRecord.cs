namespace Coilwright.Workshop.People;

/// <summary>A person who signs in. Of passwords and PINs only what they are checked against is kept.</summary>
public sealed record AccountRecord
{
    public required Guid Id { get; init; }

    /// <summary>The name that every record of this person carries.</summary>
    public required string Name { get; init; }

    /// <summary>The name as it is compared, <see cref="Entry.NameKey"/>.</summary>
    public required string NameKey { get; init; }

    public required Role Role { get; init; }

    public required string PasswordHash { get; init; }

    /// <summary>True when somebody else chose the password: the person must choose one first.</summary>
    public bool MustChange { get; init; }

    /// <summary>Empty when the person has no PIN.</summary>
    public string PinHash { get; init; } = "";

    /// <summary>New whenever what the person may do changes: sessions that carry another are over.</summary>
    public required Guid Stamp { get; init; }

    /// <summary>Wrong passwords, and wrong PINs, since the last right one.</summary>
    public int WrongPasswords { get; init; }

    public int WrongPins { get; init; }

    /// <summary>Until when no password is tried; null when one is.</summary>
    public DateTimeOffset? LockedUntilUtc { get; init; }

    public required DateTimeOffset SinceUtc { get; init; }

    /// <summary>When the person left; null while they may sign in. What they did keeps their name.</summary>
    public DateTimeOffset? LeftUtc { get; init; }
}
