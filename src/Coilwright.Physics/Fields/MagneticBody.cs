namespace Coilwright.Physics.Fields;

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
internal sealed record BodyMaterial(Estimate RelativePermeability, double ConductivitySPerM, SkinShape Skin, double HalfThicknessM, double ShapeError);

/// <summary>A point where the normal field of an element is taken, with its share of the element's mean.</summary>
internal readonly record struct SurfacePoint(int Element, double X, double Y, double Z, double NormalX, double NormalY, double NormalZ, double Share);

/// <summary>A permeable part, its surface cut into elements of even charge density.</summary>
internal abstract class MagneticBody(BodyMaterial material, Vector3M polarisationT)
{
    /// <summary>Source term µ0·M0, T.</summary>
    public Vector3M PolarisationT { get; } = polarisationT;

    public BodyMaterial Material { get; } = material;
    public abstract int Count { get; }

    /// <summary>Area of each element, m².</summary>
    public abstract double[] Area { get; }

    /// <summary>Height of each element's middle, m.</summary>
    public abstract double HeightM(int element);

    /// <summary>Mean normal component of the source term over an element, T.</summary>
    public abstract double NormalPolarisationT(int element);

    /// <summary>Where the field of other bodies is taken.</summary>
    public abstract IReadOnlyList<SurfacePoint> Points { get; }

    /// <summary>Field strength at a point per unit charge density on one element.</summary>
    public abstract Vector3M FieldOf(int element, double x, double y, double z);

    /// <summary>Mean normal field of a winding on each element, and its scalar potential there (up to one constant for the body).</summary>
    public abstract void Couple(CoilField coil, int place, double[] drive, double[] potential);

    /// <summary>Index of the element that mirrors one in a plane x = const through the body's middle.</summary>
    public abstract int Mirror(int element);

    /// <summary>True if this body is the mirror image of another in the plane x = x0.</summary>
    public abstract bool Mirrors(MagneticBody other, double x0);
}
