namespace Coilwright.Workshop.People;

/// <summary>What happened to an account, a session, a token or a secret.</summary>
public enum AccountAct
{
    Invited,
    RoleChanged,
    PasswordSet,
    PinSet,
    PinRemoved,
    Left,
    SignedIn,
    SignedOut,
    Locked,
    PinLocked,
    SessionEnded,
    TokenMade,
    TokenEnded,

    /// <summary>Somebody without the right to secrets saw what must be set for a batch of a secret recipe.</summary>
    SecretSeen,
}

/// <summary>One line of who did what with accounts. Never edited.</summary>
public sealed record AccountEventRecord
{
    public required Guid Id { get; init; }

    public required AccountAct Act { get; init; }

    /// <summary>Whom or what it is about.</summary>
    public required string About { get; init; }

    public string Detail { get; init; } = "";

    /// <summary>Who did it.</summary>
    public string Person { get; init; } = "";

    public required DateTimeOffset TimeUtc { get; init; }
}
