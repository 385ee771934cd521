using System.Globalization;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>One line of a counter, taken in.</summary>
/// <param name="Number">Which line, from 1.</param>
/// <param name="State">Where the count stands.</param>
/// <param name="Problem">Why the line was not understood; empty when it was.</param>
public sealed record CountStep(long Number, CountState State, string Problem);

/// <summary>Turns as a counter's lines give them: each line its reading, or one pulse.</summary>
/// <param name="count">The count that is kept.</param>
/// <param name="pulses">True where each line is one pulse, whatever it says.</param>
public sealed class TurnLines(TurnCount count, bool pulses)
{
    private long _number;

    /// <summary>How many lines were not understood.</summary>
    public int Unread { get; private set; }

    /// <summary>The count.</summary>
    public TurnCount Count => count;

    /// <summary>Takes in the next line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="at">When it came; null where nothing is known of time.</param>
    /// <returns>Where the count stands; null for an empty line between readings.</returns>
    public CountStep? Take(string line, TimeSpan? at)
    {
        _number++;
        if (pulses)
        {
            return new CountStep(_number, count.Pulse(at), "");
        }

        string text = line.Trim();
        if (text.Length == 0)
        {
            return null;
        }

        if (TryReading(text, out double reading))
        {
            return new CountStep(_number, count.Add(at, reading), "");
        }

        Unread++;
        string shown = text.Length > 40 ? text[..40] + "…" : text;
        return new CountStep(_number, count.State, $"\"{shown}\" is no counter's reading (0 to 1,000,000)");
    }

    private static bool TryReading(string text, out double reading) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out reading)
        && reading is >= 0 and <= TurnCount.Most;
}
