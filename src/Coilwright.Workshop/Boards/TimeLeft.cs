using System.Globalization;

namespace Coilwright.Workshop.Boards;

/// <summary>How long it is to a moment, in the words that the page's own clock goes on with.</summary>
public static class TimeLeft
{
    /// <summary>"12 min", "1 h 20 min", "3 days"; of what is past, how long ago.</summary>
    public static string Words(TimeSpan left)
    {
        long seconds = (long)(left >= TimeSpan.Zero ? Math.Ceiling(left.TotalSeconds) : Math.Floor(-left.TotalSeconds));
        string words = Length(seconds);
        return left >= TimeSpan.Zero ? words : words + " ago";
    }

    private static string Length(long seconds)
    {
        long minutes = seconds / 60,
            hours = minutes / 60;
        return (seconds, minutes, hours) switch
        {
            (< 60, _, _) => Text($"{seconds} s"),
            (< 120, _, _) => Text($"1 min {seconds - 60} s"),
            (_, < 120, _) => Text($"{minutes} min"),
            (_, _, < 48) => Text($"{hours} h {minutes % 60} min"),
            _ => Text($"{hours / 24} days"),
        };
    }

    private static string Text(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
