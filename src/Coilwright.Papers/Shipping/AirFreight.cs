using System.Globalization;
using Coilwright.Physics.Materials;

namespace Coilwright.Papers.Shipping;

/// <summary>
/// Whether magnets in a box ask for more than a label when it flies: what is known, as a question and an answer. It replaces no rule.
/// </summary>
/// <remarks>
/// The one limit that was read is that of the United States [AirFreight]: 49 CFR 173.21(d). What carriers want declared, and where they
/// measure it, is asked of the carrier. The bound is <see cref="DipoleField.LargestT"/>: a box whose magnets face each other has less.
/// Holds
/// for a box small against the distance; the law counts from the package's surface, the bound from the magnets' middle, which is the
/// careful side.
/// </remarks>
public static class AirFreight
{
    /// <summary>The law whose limit is printed.</summary>
    public const string Law = "49 CFR 173.21(d), United States, as PHMSA quotes it in interpretation 09-0084 of 21 March 2011";

    /// <summary>Distance and field above which that law forbids a package on an aircraft, m and T.</summary>
    public const double ForbiddenDistanceM = 4.5,
        ForbiddenT = 0.00525e-4;

    /// <summary>A nearer distance for which the bound is printed, for the carrier to compare with its own limit, m. Our choice.</summary>
    public const double NearDistanceM = 2.0;

    /// <summary>The answer in words.</summary>
    /// <param name="momentAm2">Sum of the moments' sizes, A·m²; null when nobody gave it.</param>
    public static string Answer(double? momentAm2) =>
        momentAm2 switch
        {
            null => "not known: measure the packed box, and ask the carrier where and what its limits are",
            { } moment when DipoleField.LargestT(moment, ForbiddenDistanceM) > ForbiddenT =>
                "not shown by the bound, and may be forbidden: turn magnets against each other, add keepers, measure the packed box",
            _ => "below that law's limit even if all magnets point one way; whether it must be declared, ask the carrier",
        };

    /// <summary>The bound at a distance in words.</summary>
    internal static string Bound(double? momentAm2, double distanceM) =>
        momentAm2 is { } moment
            ? string.Create(CultureInfo.InvariantCulture, $"at most {DipoleField.LargestT(moment, distanceM) * 1e4:0.#####} G")
            : "not known";
}
