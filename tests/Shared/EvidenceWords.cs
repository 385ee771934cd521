using System.Globalization;

namespace Coilwright.Shared;

/// <summary>What the columns "allowed" and "found" say of the values that one check held.</summary>
internal static class EvidenceWords
{
    /// <summary>The bounds, one phrase for each kind and unit.</summary>
    public static string Allowed(IReadOnlyList<EvidencePoint> points) => Each(points, group => Span(group, one => one.Kind switch
    {
        EvidenceBound.Absolute => IsAlone(group) ? Plain(one.Expected) + " ± " + Plain(one.High) + Unit(one) : "± " + Plain(one.High) + Unit(one),
        EvidenceBound.Relative => "± " + Part(one.High),
        EvidenceBound.RelativeBetween => Signed(one.Low) + " to " + Signed(one.High),
        EvidenceBound.Between => Plain(one.Low) + " to " + Plain(one.High) + Unit(one),
        EvidenceBound.Interval => "holds " + Plain(one.Found) + Unit(one),
        _ => "exact",
    }));

    /// <summary>What was found: of several values the one that used most of its bound, with that bound where they differ, and how many there were.</summary>
    public static string Found(IReadOnlyList<EvidencePoint> points) => Each(points, group =>
    {
        EvidencePoint worst = group.MaxBy(one => one.Share)!;
        string many = group.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" ({group.Count} values)") : "";
        string of = group.Count > 1 && worst.Kind is EvidenceBound.Absolute or EvidenceBound.Relative && group.Any(one => one.High != worst.High) ? " of ± " + (worst.Kind == EvidenceBound.Relative ? Part(worst.High) : Plain(worst.High)) : "";
        return worst.Kind switch
        {
            EvidenceBound.Absolute => IsAlone(group) ? Beside(worst.Found, worst.High) + Unit(worst) : Deviation(worst.Off) + of + Unit(worst) + many,
            EvidenceBound.Relative or EvidenceBound.RelativeBetween => Signed(worst.Off) + of + many,
            EvidenceBound.Between => group.Count == 1 ? Beside(worst.Found, worst.High - worst.Low) + Unit(worst)
                : Beside(group.Min(one => one.Found), worst.High - worst.Low) + " to " + Beside(group.Max(one => one.Found), worst.High - worst.Low) + Unit(worst) + many,
            EvidenceBound.Interval => Beside(worst.Low, worst.High - worst.Low) + " to " + Beside(worst.High, worst.High - worst.Low) + Unit(worst),
            _ => group.Count == 1 ? "the same" : string.Create(CultureInfo.InvariantCulture, $"all {group.Count} the same"),
        };
    });

    /// <summary>One value with something to stand beside; a difference from nought is told as a difference.</summary>
    private static bool IsAlone(IReadOnlyList<EvidencePoint> group) => group.Count == 1 && group[0].Expected != 0;

    private static string Each(IReadOnlyList<EvidencePoint> points, Func<IReadOnlyList<EvidencePoint>, string> words) =>
        string.Join("; ", points.GroupBy(one => (one.Kind, one.Unit)).Select(group => words([.. group])));

    /// <summary>One phrase where all bounds are alike, else the narrowest and the widest.</summary>
    private static string Span(IReadOnlyList<EvidencePoint> group, Func<EvidencePoint, string> words)
    {
        EvidencePoint narrow = group.MinBy(one => one.High - (one.Low == one.High ? 0 : one.Low))!, wide = group.MaxBy(one => one.High - (one.Low == one.High ? 0 : one.Low))!;
        return words(narrow) == words(wide) ? words(narrow) : words(narrow) + " … " + words(wide);
    }

    private static string Unit(EvidencePoint point) => point.Unit is "" or "°" ? point.Unit : " " + point.Unit;

    /// <summary>A part of one as a percentage, or as a power of ten where that says more.</summary>
    private static string Part(double part) => part >= 9.99e-6 ? (100 * part).ToString("0.####", CultureInfo.InvariantCulture) + " %" : Plain(part);

    private static string Signed(double part) => Math.Abs(part) >= 5e-6 || part == 0
        ? (100 * part).ToString("+0.00#;-0.00#;0", CultureInfo.InvariantCulture) + " %"
        : Deviation(part);

    private static string Deviation(double off) => off == 0 ? "0" : Math.Abs(off) < 1e-4 ? off.ToString("+0.0e+0;-0.0e+0", CultureInfo.InvariantCulture) : off.ToString("+0.#####;-0.#####", CultureInfo.InvariantCulture);

    private static string Plain(double value) => value != 0 && Math.Abs(value) < 1e-4 ? value.ToString("0.##e+0", CultureInfo.InvariantCulture) : value.ToString("0.##########", CultureInfo.InvariantCulture);

    /// <summary>A value with two more digits than its bound's first.</summary>
    private static string Beside(double value, double bound) => bound <= 0 ? Plain(value) : value.ToString("F" + Math.Clamp(1 - (int)Math.Floor(Math.Log10(bound)), 0, 10).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
