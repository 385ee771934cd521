using System.Globalization;
using Coilwright.Physics;

namespace Coilwright.Workshop.Recipes.Sizes;

/// <summary>
/// How well lengths are known for which no ± is typed, and how much of it differs from piece to piece. 95 % half-widths; all our assumption
/// until a shop states its own.
/// </summary>
public sealed record SizeRules
{
    /// <summary>What holds in a shop that has stated nothing.</summary>
    public static SizeRules Usual { get; } = new();

    /// <summary>Measured by caliper, m.</summary>
    public double MeasuredM { get; init; } = 0.05e-3;

    /// <summary>Drawn and made in one tool, m.</summary>
    public double MouldedM { get; init; } = 0.1e-3;

    /// <summary>Drawn and built by hand, m.</summary>
    public double ByHandM { get; init; } = 0.2e-3;

    /// <summary>Nothing is said of the part, m; 0 takes such lengths as exact, until a shop states its own.</summary>
    public double CommonM { get; init; }

    /// <summary>Clearance of the strings, set by hand on each instrument, m; 0 takes it as exact.</summary>
    public double ClearanceM { get; init; }

    /// <summary>No half-width of these is wider than this part of its length: thin sheet and rods come closer than bobbins.</summary>
    public double MostPart { get; init; } = 0.03;

    /// <summary>Part of a half-width that differs from piece to piece: out of one tool, by hand, and where nothing is said.</summary>
    public double MouldedShare { get; init; } = 0.2;

    /// <summary>The same of parts built by hand.</summary>
    public double ByHandShare { get; init; } = 1;

    /// <summary>The same where nothing is said.</summary>
    public double CommonShare { get; init; } = 0.5;

    /// <summary>Part of a half-width that differs from piece to piece.</summary>
    public double ShareOf(PartMaking making) =>
        making.By switch
        {
            MadeBy.Tool => MouldedShare,
            MadeBy.Hand => ByHandShare,
            _ => CommonShare,
        };

    /// <summary>The half-width of a length without a ±, m, and where it comes from.</summary>
    /// <param name="making">How the part is made.</param>
    /// <param name="lengthM">The length, m; null for a place, which has no size of its own.</param>
    public (double WithinM, Basis Basis, string Source) WithinOf(PartMaking making, double? lengthM)
    {
        (double usualM, Basis basis, string words) = making switch
        {
            { Measured: true } => (MeasuredM, Basis.Measured, "measured by caliper"),
            { By: MadeBy.Tool } => (MouldedM, Basis.Assumed, "drawn and moulded"),
            { By: MadeBy.Hand } => (ByHandM, Basis.Assumed, "drawn and built by hand"),
            _ => (CommonM, Basis.Assumed, "common practice, no source"),
        };
        double withinM = lengthM is { } length ? Math.Min(usualM, MostPart * length) : usualM;
        return (withinM, basis, string.Create(CultureInfo.InvariantCulture, $"{words}: ±{withinM * 1e3:0.###} mm, {Origin}"));
    }

    /// <summary>Where the numbers come from: ours, or the shop's.</summary>
    public string Origin { get; init; } = "our assumption";
}
