namespace Coilwright.Papers.Shipping;

/// <summary>One piece of a certificate.</summary>
/// <param name="Serial">The piece.</param>
/// <param name="Recipe">Name of its recipe.</param>
/// <param name="Revision">Letter of the revision, or empty.</param>
/// <param name="Readings">Its readings with their limits.</param>
/// <param name="Passes">True when the shop lets it go.</param>
/// <param name="Verdict">The verdict in words.</param>
/// <param name="Person">Who tested it.</param>
/// <param name="TestedUtc">When.</param>
public sealed record CertifiedPiece(
    string Serial,
    string Recipe,
    string Revision,
    IReadOnlyList<CertifiedReading> Readings,
    bool Passes,
    string Verdict,
    string Person,
    DateTimeOffset TestedUtc
)
{
    /// <summary>How its magnets are charged, in words; empty where there is nothing to say.</summary>
    public string Charge { get; init; } = "";
}
