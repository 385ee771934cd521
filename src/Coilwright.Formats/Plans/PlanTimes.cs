using System.Globalization;

namespace Coilwright.Formats.Plans;

/// <summary>Times of a plan as a person reads them.</summary>
public static class PlanTimes
{
    private const double DayS = 86400;

    /// <summary>"1 d 3 h 20 min", "45 s"; what is nothing is left out.</summary>
    /// <param name="seconds">Time from the start, or between two times, s, zero or more.</param>
    public static string Describe(double seconds)
    {
        double whole = Math.Floor(seconds + 5e-4);
        (double days, double rest) = (Math.Floor(whole / DayS), whole % DayS);
        string[] parts =
        [
            .. Part(days, "d"),
            .. Part(Math.Floor(rest / 3600), "h"),
            .. Part(Math.Floor(rest % 3600 / 60), "min"),
            .. Part(Math.Max(0, Math.Round(seconds - whole + rest % 60, 3)), "s"),
        ];
        return parts.Length == 0 ? "0 min" : string.Join(' ', parts);
    }

    private static string[] Part(double number, string unit) =>
        number > 0 ? [string.Create(CultureInfo.InvariantCulture, $"{number:0.###} {unit}")] : [];
}
