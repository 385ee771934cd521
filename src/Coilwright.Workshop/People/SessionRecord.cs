namespace Coilwright.Workshop.People;

/// <summary>A browser that is signed in: the person who signed in with a password, and who stands at it now.</summary>
public sealed record SessionRecord
{
    public required Guid Id { get; init; }

    /// <summary>Hash of the key that the browser keeps; the key itself is kept nowhere here.</summary>
    public required string KeyHash { get; init; }

    /// <summary>Who signed in with a password.</summary>
    public required Guid AccountId { get; init; }

    /// <summary>That account's stamp at the time.</summary>
    public required Guid Stamp { get; init; }

    /// <summary>Who came with a PIN since; null when nobody did.</summary>
    public Guid? PinAccountId { get; init; }

    /// <summary>That account's stamp at the time.</summary>
    public Guid? PinStamp { get; init; }

    /// <summary>The browser as it calls itself, short.</summary>
    public string Device { get; init; } = "";

    public required DateTimeOffset BegunUtc { get; init; }

    /// <summary>When it was last used, to some minutes.</summary>
    public required DateTimeOffset SeenUtc { get; init; }

    /// <summary>When it was ended by hand; null while it lasts.</summary>
    public DateTimeOffset? EndedUtc { get; init; }
}
