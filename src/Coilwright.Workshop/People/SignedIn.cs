namespace Coilwright.Workshop.People;

/// <summary>Who stands behind a request.</summary>
/// <param name="Name">The name that records carry.</param>
/// <param name="Role">What they are.</param>
/// <param name="Rights">What they may do here and now.</param>
public sealed record SignedIn(string Name, Role Role, IReadOnlySet<Right> Rights)
{
    /// <summary>Of a person: the account; null of a token.</summary>
    public Guid? AccountId { get; init; }

    /// <summary>Of a person: the session; null of a token.</summary>
    public Guid? SessionId { get; init; }

    /// <summary>True when the person came with a PIN at a tablet that another signed in.</summary>
    public bool ByPin { get; init; }

    /// <summary>True when the person must choose a password before anything else.</summary>
    public bool MustChange { get; init; }

    /// <summary>True when nobody stands at the tablet: it is signed in, and asks who is there.</summary>
    public bool AsksWho { get; init; }

    /// <summary>True when they may do it.</summary>
    public bool May(Right right) => Rights.Contains(right);
}
