namespace Coilwright.Workshop.Customers;

/// <summary>A customer: as little as a shop needs. The name can be erased; the reference stays, so that every trace holds.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="Reference">What the shop calls it in its papers, for example "K-031"; one of a kind, and no name.</param>
/// <param name="Name">The name; empty once erased.</param>
/// <param name="TimeUtc">When it was entered.</param>
/// <param name="ErasedUtc">When the name was erased; null while it stands.</param>
public sealed record CustomerRecord(Guid Id, string Reference, string Name, DateTimeOffset TimeUtc, DateTimeOffset? ErasedUtc = null)
{
    /// <summary>Reference, and the name where it stands.</summary>
    public string Words =>
        (Name, ErasedUtc) switch
        {
            ({ Length: > 0 }, _) => $"{Reference} ({Name})",
            (_, null) => Reference,
            _ => $"{Reference} (name erased)",
        };
}
