namespace Coilwright.Physics.Winding;

/// <summary>What the wire is wound on: a former with straight sides and rounded ends, and the window above it. SI units.</summary>
/// <remarks>
/// The former is a rectangle with corners of radius <see cref="EndRadiusM"/>. With the radius at half the width it is a racetrack;
/// with length and width equal too it is round. A turn at distance d from the former is the offset curve: straights unchanged, radius + d.
/// </remarks>
public sealed record Bobbin
{
    /// <summary>Overall length of the former along x, m.</summary>
    public required double CoreLengthM { get; init; }

    /// <summary>Overall width of the former along y, m.</summary>
    public required double CoreWidthM { get; init; }

    /// <summary>Corner radius of the former, m; at most half the smaller side.</summary>
    public required double EndRadiusM { get; init; }

    /// <summary>Space between the flanges, m.</summary>
    public required double WindingHeightM { get; init; }

    /// <summary>Radial room for the winding, m; null when not stated.</summary>
    public double? MaxBuildM { get; init; }

    /// <summary>
    /// The shop's own limit of fill for this bobbin, 0.3…0.95: what it has learnt that it can wind; null when none is known.
    /// </summary>
    public double? FillLimit { get; init; }

    /// <summary>What the bobbin is made of, by its name in the recipe; empty when not stated.</summary>
    public string Material { get; init; } = "";

    /// <summary>Relative permittivity of that material with its 95 % interval; null when it is not known.</summary>
    public Estimate? Permittivity { get; init; }

    /// <summary>Thickness of the wall under the first turn, m; null when not stated.</summary>
    public double? WallM { get; init; }

    /// <summary>Thickness of each flange, m; null when not stated.</summary>
    public double? FlangeM { get; init; }

    /// <summary>Length of each straight side along x, m.</summary>
    public double LongStraightM => CoreLengthM - 2 * EndRadiusM;

    /// <summary>Length of each straight end along y, m; zero for a racetrack.</summary>
    public double ShortStraightM => CoreWidthM - 2 * EndRadiusM;

    /// <summary>Length of a turn whose wire centre lies <paramref name="distanceM"/> outside the former, m.</summary>
    /// <param name="distanceM">How far the wire lies outside the former, m.</param>
    public double TurnLengthM(double distanceM) => 2 * (LongStraightM + ShortStraightM) + 2 * Math.PI * (EndRadiusM + distanceM);

    /// <summary>Area inside such a turn, m².</summary>
    /// <param name="distanceM">How far the wire lies outside the former, m.</param>
    public double TurnAreaM2(double distanceM)
    {
        double radiusM = EndRadiusM + distanceM;
        return LongStraightM * ShortStraightM + 2 * radiusM * (LongStraightM + ShortStraightM) + Math.PI * radiusM * radiusM;
    }
}
