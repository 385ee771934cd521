using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Plans;

/// <summary>What times of a job list may be: from nothing, or a thousandth of a second, to a year.</summary>
internal static class PlanLimits
{
    private const double YearS = 365 * 86400.0;

    /// <summary>A time that something takes.</summary>
    public static Limits Taking { get; } = new(QuantityKind.Duration, 0.001, YearS, "s", "21 min");

    /// <summary>A time from the start, or between two steps.</summary>
    public static Limits Since { get; } = new(QuantityKind.Duration, 0, YearS, "d", "3 d");

    /// <summary>A time after which an opening comes again.</summary>
    public static Limits Period { get; } = new(QuantityKind.Duration, 3600, YearS, "h", "24 h");
}
