namespace Coilwright.Workshop.Tracing;

/// <summary>What a search found.</summary>
/// <param name="Asked">What was asked for.</param>
/// <param name="Hits">Things found, by kind.</param>
/// <param name="Near">Names near it, when nothing was found.</param>
/// <param name="LeftOut">Names that match too and are not among the hits.</param>
public sealed record SearchAnswer(string Asked, IReadOnlyList<TraceHit> Hits, IReadOnlyList<string> Near, int LeftOut)
{
    /// <summary>
    /// The one thing meant: the only one of that name, or the only one at all, not by a part of its name. Null when a person must choose.
    /// </summary>
    public TraceHit? Only =>
        (Hits.Where(hit => hit.Match == NameMatch.Name).ToArray(), Hits) switch
        {
            ([var named], _) => named,
            (_, [{ Match: NameMatch.Number } numbered]) => numbered,
            _ => null,
        };

    /// <summary>How hits matched, in words.</summary>
    public static string MatchWords(NameMatch match, string asked) =>
        match switch
        {
            NameMatch.Part => $"Nothing is called “{asked}”; it is a part of these names",
            NameMatch.Number => $"“{asked}” taken as the number of a coil",
            _ => $"Of the name “{asked}”",
        };
}
