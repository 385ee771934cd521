using System.Globalization;

namespace Coilwright.Workshop.Pieces;

/// <summary>
/// An entry that waited on a tablet: when the person made it and when the tablet sent it, both by the tablet's own clock.
/// </summary>
/// <param name="SaidUtc">When the person made it.</param>
/// <param name="SentUtc">When the tablet sent it.</param>
/// <remarks>How long it waited is right even where the tablet's clock is wrong, since both times are of the same clock.</remarks>
public sealed record LateEntry(DateTimeOffset SaidUtc, DateTimeOffset SentUtc)
{
    /// <summary>
    /// What waited less than this was told at once; what waited longer than the other is no waiting but a clock that jumped.
    /// </summary>
    private static readonly TimeSpan s_least = TimeSpan.FromMinutes(1),
        s_most = TimeSpan.FromDays(30);

    /// <summary>How long it waited.</summary>
    public TimeSpan Waited => SentUtc - SaidUtc;

    /// <summary>When it was made by a clock that shows the given time as it arrives.</summary>
    public static DateTimeOffset MadeUtc(LateEntry? told, DateTimeOffset arrivedUtc) => arrivedUtc - (told?.Waited ?? TimeSpan.Zero);

    /// <summary>Reads an interval; null when it is none, or when it did not wait for at least a minute.</summary>
    public static LateEntry? Read(string? text)
    {
        string[] parts = (text ?? "").Split('/');
        return
            parts.Length == 2
            && TryTime(parts[0], out DateTimeOffset said)
            && TryTime(parts[1], out DateTimeOffset sent)
            && sent - said >= s_least
            && sent - said <= s_most
            ? new LateEntry(said, sent)
            : null;
    }

    private static bool TryTime(string text, out DateTimeOffset time) =>
        DateTimeOffset.TryParse(
            text,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out time
        );
}
