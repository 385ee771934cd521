using System.Globalization;

namespace Coilwright.Shared;

/// <summary>
/// One row of <c>docs/evidence.md</c>: asserts and notes at once, so that what is printed as allowed is what the test holds.
/// </summary>
/// <remarks>
/// Make one with <see cref="Outside"/> or <see cref="Own"/>, hold every value to its bound, and end with <see cref="Record"/>. Every bound
/// is two-sided unless it is an interval. Making one takes its old line away, and only <see cref="Record"/> writes the new: a check that
/// failed or never ended has no line.
/// Keep run times and other numbers that change from run to run out of it.
/// </remarks>
internal sealed class Evidence
{
    /// <summary>The words a check may stand on; docs/sources.md says at its head what each means.</summary>
    public static readonly string[] Standings = ["read", "read-secondary", "derived", "memory", "run here"];

    /// <summary>Where a bound may come from: the first word of <c>because</c>.</summary>
    public static readonly string[] Grounds = ["reference", "rounding", "method", "chance", "exact", "ratchet"];

    private readonly EvidenceLine _head;
    private readonly string _file;
    private readonly List<EvidencePoint> _points = [];

    private Evidence(EvidenceLine head, string file)
    {
        if (!Grounds.Contains(head.Because.Split([' ', ':', ','])[0]))
        {
            throw new ArgumentException($"'{head.Because}': a bound comes from {string.Join(", ", Grounds)}.");
        }

        (_head, _file) = (head, file);
        EvidenceFile.Remove(file, head.Check);
    }

    /// <summary>A check against something published, measured, or computed by another program or method outside this one.</summary>
    /// <param name="check">What was checked, in one sentence; its key.</param>
    /// <param name="source">Whom or what it is held against, by name; with its key of docs/sources.md in brackets.</param>
    /// <param name="standing">One of <see cref="Standings"/>.</param>
    /// <param name="because">Where the bound comes from: one of <see cref="Grounds"/>, then in words.</param>
    /// <param name="id">A name by which docs/theory.md quotes the row; empty where nothing quotes it.</param>
    /// <param name="file">The file of lines; the test assembly's own unless a test of this class says another.</param>
    public static Evidence Outside(string check, string source, string standing, string because, string id = "", string? file = null) =>
        Standings.Contains(standing)
            ? new Evidence(new EvidenceLine("outside", id, check, source, standing, "", "", because), file ?? EvidenceFile.Default())
            : throw new ArgumentException($"'{standing}' is none of {string.Join(", ", Standings)}.");

    /// <summary>
    /// A check of the program against itself: engine against engine, simulation with known truth, reciprocity, search by our own forecast.
    /// </summary>
    /// <param name="check">What was checked, in one sentence; its key.</param>
    /// <param name="against">What of our own it is held against.</param>
    /// <param name="because">Where the bound comes from: one of <see cref="Grounds"/>, then in words.</param>
    /// <param name="id">A name by which docs/theory.md quotes the row; empty where nothing quotes it.</param>
    /// <param name="file">The file of lines; the test assembly's own unless a test of this class says another.</param>
    public static Evidence Own(string check, string against, string because, string id = "", string? file = null) =>
        new(new EvidenceLine("own", id, check, against, "our own", "", "", because), file ?? EvidenceFile.Default());

    /// <summary>Holds a value to ± <paramref name="allowed"/> of what is expected, in its unit.</summary>
    public Evidence Within(double found, double expected, double allowed, string unit = "", string at = "") =>
        Held(new EvidencePoint(EvidenceBound.Absolute, found, expected, allowed, allowed, unit), at);

    /// <summary>Holds a value to ± <paramref name="allowed"/> as a part of what is expected.</summary>
    public Evidence WithinPart(double found, double expected, double allowed, string at = "") =>
        Held(new EvidencePoint(EvidenceBound.Relative, found, expected, allowed, allowed, ""), at);

    /// <summary>Holds a value's deviation from what is expected, as a part of it, between two bounds of different size.</summary>
    public Evidence BetweenParts(double found, double expected, double low, double high, string at = "") =>
        Held(new EvidencePoint(EvidenceBound.RelativeBetween, found, expected, low, high, ""), at);

    /// <summary>Holds a value inside an interval.</summary>
    public Evidence Inside(double found, double low, double high, string unit = "", string at = "") =>
        Held(new EvidencePoint(EvidenceBound.Between, found, (low + high) / 2, low, high, unit), at);

    /// <summary>Holds an interval that must have a value in it.</summary>
    public Evidence Holds(double low, double high, double value, string unit = "", string at = "") =>
        Held(new EvidencePoint(EvidenceBound.Interval, value, value, low, high, unit), at);

    /// <summary>Holds two things to be the same.</summary>
    public Evidence Same<T>(T found, T expected, string at = "")
    {
        Assert.True(EqualityComparer<T>.Default.Equals(found, expected), $"{_head.Check}, {at}: found {found}, expected {expected}");
        _points.Add(new EvidencePoint(EvidenceBound.Same, 0, 0, 0, 0, ""));
        return this;
    }

    /// <summary>Writes the row: everything held.</summary>
    /// <param name="remark">What the numbers cannot say, after what was found.</param>
    public void Record(string remark = "")
    {
        Assert.True(_points.Count > 0, _head.Check + ": nothing was held");
        string found = EvidenceWords.Found(_points) + (remark.Length > 0 ? "; " + remark : "");
        EvidenceFile.Add(_file, _head with { Allowed = EvidenceWords.Allowed(_points), Found = found });
    }

    private Evidence Held(EvidencePoint point, string at)
    {
        string where = at.Length > 0 ? $"{_head.Check}, {at}" : _head.Check;
        string said = string.Create(CultureInfo.InvariantCulture, $"found {point.Found:G8}, expected {point.Expected:G8}");
        Assert.True(point.Share <= 1, $"{where}: {said}; {EvidenceWords.Found([point])}, allowed {EvidenceWords.Allowed([point])}");
        _points.Add(point);
        return this;
    }
}
