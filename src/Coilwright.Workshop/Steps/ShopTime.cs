using System.Globalization;

namespace Coilwright.Workshop.Steps;

/// <summary>Moments in the shop's words. Every moment is kept in UTC; the zone is for reading alone.</summary>
public static class ShopTime
{
    /// <summary>
    /// Day, hour and nearest minute, for example "2026-03-02 13:46"; the hour that comes twice when summer time ends says which it is.
    /// </summary>
    public static string Words(DateTimeOffset utc, TimeZoneInfo zone)
    {
        DateTimeOffset minute = new DateTimeOffset(
                (utc.UtcTicks + TimeSpan.TicksPerMinute / 2) / TimeSpan.TicksPerMinute * TimeSpan.TicksPerMinute,
                TimeSpan.Zero
            ),
            local = TimeZoneInfo.ConvertTime(minute, zone);
        string words = local.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return zone.IsAmbiguousTime(local.DateTime) ? words + local.ToString(" (zzz)", CultureInfo.InvariantCulture) : words;
    }

    /// <summary>
    /// The shop's now: the clock's, but never before the newest record, since a clock that was set back must not make anything younger.
    /// </summary>
    /// <param name="clock">The computer's clock.</param>
    /// <param name="newestRecordUtc">When the newest record was made; null when there is none.</param>
    public static DateTimeOffset NowUtc(TimeProvider clock, DateTimeOffset? newestRecordUtc)
    {
        DateTimeOffset now = clock.GetUtcNow();
        return newestRecordUtc is { } newest && newest > now ? newest : now;
    }

    /// <summary>What is odd about the clock, or null: it stands behind the newest record by more than a minute.</summary>
    public static string? Doubt(TimeProvider clock, DateTimeOffset? newestRecordUtc)
    {
        TimeSpan behind = (newestRecordUtc ?? DateTimeOffset.MinValue) - clock.GetUtcNow();
        return behind > TimeSpan.FromMinutes(1)
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"this computer's clock stands {behind.TotalMinutes:0} min behind the newest record; until it has caught up, holds are "
                    + $"counted from that record's time"
            )
            : null;
    }
}
