using System.Globalization;

namespace Coilwright.Shared;

/// <summary>What the columns "allowed" and "found" say of the values that one check held.</summary>
internal static class EvidenceWords
{
    /// <summary>The bounds, one phrase for each kind and unit; the narrowest and the widest where they differ.</summary>
    public static string Allowed(IReadOnlyList<EvidencePoint> points) => Each(points, group =>
        {
            string narrow = Bound(group.MinBy(Width)!, IsAlone(group)),
                wide = Bound(group.MaxBy(Width)!, IsAlone(group));
            return narrow == wide ? narrow : narrow + " … " + wide;
        });

    /// <summary>
    /// What was found: of several values the one that used most of its bound, with that bound where they differ, and how many there were.
    /// </summary>
    public static string Found(IReadOnlyList<EvidencePoint> points) => Each(points, group =>
        {
            EvidencePoint worst = group.MaxBy(one => one.Share)!;
            string many = group.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" ({group.Count} values)") : "";
            string of = group.Any(one => one.High != worst.High) ? " of ± " + Size(worst) : "";
            return worst.Kind switch
            {
                EvidenceBound.Absolute when IsAlone(group) => Beside(worst.Found, worst.High) + Unit(worst),
                EvidenceBound.Absolute => Deviation(worst.Off) + of + Unit(worst) + many,
                EvidenceBound.Relative => Signed(worst.Off) + of + many,
                EvidenceBound.RelativeBetween => Signed(worst.Off) + many,
                EvidenceBound.Between when group.Count == 1 => Beside(worst.Found, Width(worst) / 2) + Unit(worst),
                EvidenceBound.Between => Range(group.Min(one => one.Found), group.Max(one => one.Found), worst) + many,
                EvidenceBound.Interval => Range(worst.Low, worst.High, worst),
                _ when group.Count == 1 => "the same",
                _ => string.Create(CultureInfo.InvariantCulture, $"all {group.Count} the same"),
            };
        });

    private static string Bound(EvidencePoint point, bool alone) =>
        point.Kind switch
        {
            EvidenceBound.Absolute => (alone ? Plain(point.Expected) + " " : "") + "± " + Size(point) + Unit(point),
            EvidenceBound.Relative => "± " + Size(point),
            EvidenceBound.RelativeBetween => Signed(point.Low) + " to " + Signed(point.High),
            EvidenceBound.Between => Plain(point.Low) + " to " + Plain(point.High) + Unit(point),
            EvidenceBound.Interval => "holds " + Plain(point.Found) + Unit(point),
            _ => "exact",
        };

    private static string Each(IReadOnlyList<EvidencePoint> points, Func<IReadOnlyList<EvidencePoint>, string> words) =>
        string.Join("; ", points.GroupBy(one => (one.Kind, one.Unit)).Select(group => words([.. group])));

    /// <summary>One value with something to stand beside; a difference from nought is told as a difference.</summary>
    private static bool IsAlone(IReadOnlyList<EvidencePoint> group) => group.Count == 1 && group[0].Expected != 0;

    private static double Width(EvidencePoint point) =>
        point.Kind is EvidenceBound.Absolute or EvidenceBound.Relative ? point.High : point.High - point.Low;

    private static string Size(EvidencePoint point) => point.Kind == EvidenceBound.Relative ? Part(point.High) : Plain(point.High);

    private static string Range(double low, double high, EvidencePoint point) =>
        Beside(low, Width(point) / 2) + " to " + Beside(high, Width(point) / 2) + Unit(point);

    private static string Unit(EvidencePoint point) => point.Unit is "" or "°" ? point.Unit : " " + point.Unit;

    /// <summary>A part of one as a percentage, or as a power of ten where that says more.</summary>
    private static string Part(double part) => part >= 9.99e-6 ? Text(100 * part, "0.####") + " %" : Plain(part);

    private static string Signed(double part) =>
        Math.Abs(part) >= 5e-6 || part == 0 ? Text(100 * part, "+0.00#;-0.00#;0") + " %" : Text(part, "+0.0e+0;-0.0e+0");

    private static string Deviation(double off) => Text(off, Math.Abs(off) < 1e-4 && off != 0 ? "+0.0e+0;-0.0e+0" : "+0.#####;-0.#####;0");

    private static string Plain(double value) => Text(value, Math.Abs(value) < 1e-4 && value != 0 ? "0.##e+0" : "0.##########");

    /// <summary>A value with two more digits than its bound's first.</summary>
    private static string Beside(double value, double bound) =>
        bound <= 0
            ? Plain(value)
            : Text(value, FormattableString.Invariant($"F{Math.Clamp(1 - (int)Math.Floor(Math.Log10(bound)), 0, 10)}"));

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
