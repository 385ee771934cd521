namespace Coilwright.Workshop.Steps;

/// <summary>Why something may not move on, and until when.</summary>
/// <param name="Reason">In workshop words, for example "ink cures".</param>
/// <param name="FromUtc">When it began.</param>
/// <param name="UntilUtc">When it ends by itself; null for one that a person must lift, such as an inspection.</param>
/// <param name="LiftedUtc">When a person lifted it, with the reason in <paramref name="LiftedWhy"/>; null while nobody has.</param>
/// <param name="LiftedWhy">Why it was lifted, or empty.</param>
public sealed record Hold(
    string Reason,
    DateTimeOffset FromUtc,
    DateTimeOffset? UntilUtc,
    DateTimeOffset? LiftedUtc = null,
    string LiftedWhy = ""
)
{
    /// <summary>True while it runs.</summary>
    public bool Runs(DateTimeOffset nowUtc) => (LiftedUtc is null || nowUtc < LiftedUtc) && (UntilUtc is null || nowUtc < UntilUtc);

    /// <summary>Reason and end, for people.</summary>
    public string Words(TimeZoneInfo zone) =>
        UntilUtc is { } until ? $"{Reason}, until {ShopTime.Words(until, zone)}" : $"{Reason}, until a person lifts it";
}
