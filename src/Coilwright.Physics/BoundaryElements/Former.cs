using Coilwright.Physics.Winding;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// A bobbin's former as the integrals use it: half straights and corner radius, m; what is zero but for rounding is zero.
/// </summary>
internal readonly record struct Former(double HalfLongM, double HalfShortM, double CornerM)
{
    public static Former FromBobbin(Bobbin bobbin) =>
        new(Clean(bobbin.LongStraightM / 2, bobbin), Clean(bobbin.ShortStraightM / 2, bobbin), bobbin.EndRadiusM);

    private static double Clean(double half, Bobbin bobbin) => half > 1e-9 * (bobbin.CoreLengthM + bobbin.CoreWidthM) ? half : 0;
}
