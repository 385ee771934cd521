using System.Globalization;

namespace Coilwright.Workshop.Pieces;

/// <summary>The right time of an event that was entered while the clock was wrong.</summary>
/// <param name="TimeUtc">The right time.</param>
/// <param name="Reason">Why it was wrong.</param>
public sealed record MendedTime(DateTimeOffset TimeUtc, string Reason)
{
    /// <summary>As it is kept in an event's words: the time, and the reason on the next line.</summary>
    public string Text => $"{TimeUtc.ToUniversalTime():O}\n{Reason}";

    /// <summary>The time that an event was given last; null when its own holds.</summary>
    public static MendedTime? Of(PieceEventRecord one, IReadOnlyList<PieceEventRecord> all) =>
        all.LastOrDefault(mend => mend.Kind == PieceEventKind.TimeMended && mend.About == one.Id) is { } mend ? Read(mend.Words) : null;

    /// <summary>Reads the words of such an event; null when they are none.</summary>
    public static MendedTime? Read(string words)
    {
        string[] lines = words.Split('\n', 2);
        const DateTimeStyles Utc = DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal;
        return lines.Length == 2 && DateTimeOffset.TryParse(lines[0], CultureInfo.InvariantCulture, Utc, out DateTimeOffset time)
            ? new(time, lines[1])
            : null;
    }
}
