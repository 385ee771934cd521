namespace Coilwright.Physics.BoundaryElements;

/// <summary>Section that the eddy currents of a part see.</summary>
public enum SkinShape
{
    /// <summary>Round rod: its radius counts.</summary>
    Cylinder,

    /// <summary>Flat bar or blade: half its thickness counts.</summary>
    Slab,
}

/// <summary>What a part is made of, as far as the field needs it.</summary>
/// <param name="RelativePermeability">Reversible permeability, 1 or more.</param>
/// <param name="ConductivitySPerM">Conductivity, S/m.</param>
/// <param name="Skin">Shape of the section that eddy currents circle in.</param>
/// <param name="HalfThicknessM">Radius or half thickness of that section, m.</param>
/// <param name="ShapeError">Stated error of the part's share of an inductance for its simplified shape, as a fraction.</param>
internal sealed record BodyMaterial(
    Estimate RelativePermeability,
    double ConductivitySPerM,
    SkinShape Skin,
    double HalfThicknessM,
    double ShapeError
);

/// <summary>
/// A point where the normal field is taken: the first element it belongs to (the others follow at the body's stride), and its share of the
/// coefficient of each.
/// </summary>
internal readonly record struct SurfacePoint(
    int Element,
    double X,
    double Y,
    double Z,
    double NormalX,
    double NormalY,
    double NormalZ,
    double[] Shares
);

/// <summary>
/// A permeable part, the charge on its surface a sum of elements: even patches, and for rods patches that change around the axis.
/// </summary>
internal abstract class MagneticBody(BodyMaterial material, Vector3M polarisationT)
{
    /// <summary>Source term µ0·M0, T.</summary>
    public Vector3M PolarisationT { get; } = polarisationT;

    public BodyMaterial Material { get; } = material;
    public abstract int Count { get; }

    /// <summary>From one element of a patch to its next.</summary>
    public abstract int Stride { get; }

    /// <summary>Net charge of each element per unit density, m²: its area, or zero if it goes around the axis as a wave.</summary>
    public abstract double[] Area { get; }

    /// <summary>Integral of each element's square, m²: its area, or half of it for a wave.</summary>
    public abstract double[] Weight { get; }

    /// <summary>Height of each element's middle, m; zero for a wave, which has no moment along z.</summary>
    public abstract double HeightM(int element);

    /// <summary>Coefficient of the source term's normal component on an element, T.</summary>
    public abstract double NormalPolarisationT(int element);

    /// <summary>Where the field of other bodies is taken.</summary>
    public abstract IReadOnlyList<SurfacePoint> Points { get; }

    /// <summary>The same, more of them, for fields that change within a patch.</summary>
    public virtual IReadOnlyList<SurfacePoint> Spread => Points;

    /// <summary>Elements of each patch: one, and for rods one for each wave around the axis.</summary>
    public int Waves => Count / Stride;

    /// <summary>Field strength at a point per unit density on each element of one patch.</summary>
    public abstract void PatchFields(int patch, double x, double y, double z, Span<Vector3M> fields);

    /// <summary>Field along a point's normal per unit density on each element.</summary>
    public virtual void NormalFields(in SurfacePoint point, Span<double> normal)
    {
        Span<Vector3M> patch = stackalloc Vector3M[8];
        for (int j = 0; j < Stride; j++)
        {
            PatchFields(j, point.X, point.Y, point.Z, patch);
            for (int f = 0, element = j; element < normal.Length; f++, element += Stride)
            {
                normal[element] = point.NormalX * patch[f].XM + point.NormalY * patch[f].YM + point.NormalZ * patch[f].ZM;
            }
        }
    }

    /// <summary>
    /// Coefficients of a winding's normal field and scalar potential on each element (the potential up to one constant for the body).
    /// </summary>
    /// <param name="coil">The winding.</param>
    /// <param name="share">Each element's share of its unknown's equation; those with none may be left out.</param>
    /// <param name="drive">Filled.</param>
    /// <param name="potential">Filled.</param>
    public abstract void Couple(CoilField coil, double[] share, double[] drive, double[] potential);

    /// <summary>Index of the element that mirrors one in a plane x = const through the body's middle.</summary>
    public abstract int Mirror(int element);

    /// <summary>−1 for an element that changes sign in such a mirror.</summary>
    public abstract int MirrorSign(int element);

    /// <summary>First of the elements that one has the same density as: itself, or for waves around a rod the one before it.</summary>
    public virtual int Tied(int element) => element;

    /// <summary>True if this body is the mirror image of another in the plane x = x0.</summary>
    public abstract bool Mirrors(MagneticBody other, double x0);

    /// <summary>Where the body stands, m: what another of its shape is compared by.</summary>
    public abstract Vector3M Place { get; }

    /// <summary>True if another is cut alike in every element, wherever it stands and whatever it is made of.</summary>
    public abstract bool HasShapeOf(MagneticBody other);
}
