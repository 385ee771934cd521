using System.Globalization;
using Coilwright.Physics.Materials;

namespace Coilwright.Papers.Shipping;

/// <summary>Whether magnets in a box ask for more than a label when it flies: what is known, as a question and an answer. It replaces no rule.</summary>
/// <remarks>
/// Limits [AirFreight], read second-hand: below 0.002 G at 2.1 m unregulated, above 0.00525 G at 4.6 m forbidden. The bound is <see cref="DipoleField.LargestT"/>:
/// a box whose magnets face each other has less. Holds for a box small against the distance.
/// </remarks>
public static class AirFreight
{
    /// <summary>Distance and field below which magnets are not regulated, m and T.</summary>
    public const double FreeDistanceM = 2.1, FreeT = 0.002e-4;

    /// <summary>Distance and field above which they may not fly, m and T.</summary>
    public const double ForbiddenDistanceM = 4.6, ForbiddenT = 0.00525e-4;

    /// <summary>The answer in words.</summary>
    /// <param name="momentAm2">Sum of the moments' sizes, A·m²; null when nobody gave it.</param>
    public static string Answer(double? momentAm2) => momentAm2 switch
    {
        null => "not known: measure the packed box at 2.1 m and at 4.6 m",
        { } moment when DipoleField.LargestT(moment, FreeDistanceM) < FreeT => "below the limit even if all magnets point one way",
        { } moment when DipoleField.LargestT(moment, ForbiddenDistanceM) > ForbiddenT => "not shown by the bound, and may be forbidden: turn magnets against each other, add keepers, measure the packed box",
        _ => "not shown by the bound: measure the packed box; if it is above, it flies only as declared magnetised material",
    };

    /// <summary>The bound at a distance in words.</summary>
    internal static string Bound(double? momentAm2, double distanceM) => momentAm2 is { } moment
        ? string.Create(CultureInfo.InvariantCulture, $"at most {DipoleField.LargestT(moment, distanceM) * 1e4:0.#####} G")
        : "not known";
}
