namespace Coilwright.Workshop.People;

/// <summary>A key for a meter, a counter or a program that speaks to the shop without a person.</summary>
public sealed record TokenRecord
{
    public required Guid Id { get; init; }

    /// <summary>What it is called; what it enters carries this name.</summary>
    public required string Name { get; init; }

    public required string NameKey { get; init; }

    /// <summary>Hash of the key; the key itself was shown once and is kept nowhere.</summary>
    public required string KeyHash { get; init; }

    /// <summary>What it may do.</summary>
    public required Role Role { get; init; }

    public required DateTimeOffset MadeUtc { get; init; }

    /// <summary>When it ends by itself; null for never.</summary>
    public DateTimeOffset? UntilUtc { get; init; }

    /// <summary>When it was ended by hand.</summary>
    public DateTimeOffset? EndedUtc { get; init; }

    /// <summary>Who made it.</summary>
    public string Person { get; init; } = "";
}
