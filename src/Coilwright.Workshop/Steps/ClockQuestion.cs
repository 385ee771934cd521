namespace Coilwright.Workshop.Steps;

/// <summary>What a person is asked before an entry is stored, when the computer's clock and the newest record do not go together.</summary>
/// <param name="IsBehind">True when records are later than the clock: it is wrong now, or was ahead when they were made.</param>
/// <param name="Words">The question.</param>
public sealed record ClockQuestion(bool IsBehind, string Words)
{
    /// <summary>A clock and a record differ by the minutes that clocks are wrong by themselves.</summary>
    public static readonly TimeSpan Few = TimeSpan.FromMinutes(5);

    /// <summary>A shop seldom rests for longer; after such a rest it is asked once.</summary>
    public static readonly TimeSpan LongRest = TimeSpan.FromDays(10);

    /// <summary>The question; null when there is none.</summary>
    /// <param name="clockUtc">What the computer's clock says.</param>
    /// <param name="newestStepUtc">When the newest record of pieces, baskets and inks was made; null when there is none.</param>
    /// <param name="newestUtc">When the newest record of any kind was made; null when there is none.</param>
    /// <param name="zone">The shop's time zone.</param>
    public static ClockQuestion? Of(DateTimeOffset clockUtc, DateTimeOffset? newestStepUtc, DateTimeOffset? newestUtc, TimeZoneInfo zone)
    {
        string says = "the clock of the computer that keeps the shop says " + ShopTime.Words(clockUtc, zone);
        if (newestStepUtc is { } later && later - clockUtc > Few)
        {
            return new(
                true,
                $"{says}, and the newest record was made at {ShopTime.Words(later, zone)}, which is later: is the clock right? "
                    + "If it is, it was ahead then, and what was entered with it is marked so that its time can be mended"
            );
        }

        return newestUtc is { } before && clockUtc - before > LongRest
            ? new(false, $"{says}, and the newest record is of {ShopTime.Words(before, zone)}: is the clock right?")
            : null;
    }
}
