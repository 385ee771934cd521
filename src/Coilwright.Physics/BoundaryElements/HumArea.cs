using Coilwright.Physics.Winding;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>Turns × area of coils with their cores: what a uniform field along z links.</summary>
internal static class HumArea
{
    /// <summary>
    /// Turns × area and the cores' dipole moment per ampere, by reciprocity what a uniform field along z links, m², signed.
    /// </summary>
    public static double[] Compute(IReadOnlyList<FieldCoil> coils, SurfaceSystem system, double[][] charges) =>
        [
            .. coils.Select(
                (coil, c) =>
                    coil.Sign * coil.Turns * (AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM) + Rows.Dot(charges[c], system.Moment))
            ),
        ];

    /// <summary>
    /// Change of turns × area with the build, m²/m, signed: of the winding exactly, of its cores as the field in its middle.
    /// </summary>
    /// <param name="coil">The coil.</param>
    /// <param name="area">Its turns × area, m².</param>
    /// <param name="coresByBuild">See <see cref="CoresByBuild"/>.</param>
    public static double ByBuild(FieldCoil coil, double area, double coresByBuild)
    {
        double bare = coil.Sign * coil.Turns * AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM);
        return BareByBuild(coil) + (area - bare) * coresByBuild;
    }

    /// <summary>
    /// Change of a coil's field in its own middle with its build, over that field, 1/m: what its cores follow, near enough.
    /// </summary>
    /// <remarks>The field is the mean over the build: d/db of (1/b)·∫h is (h at the outside − mean)/b.</remarks>
    public static double CoresByBuild(FieldCoil coil, CoilField winding)
    {
        Bobbin inside = coil.Bobbin;
        double b = coil.BuildM;
        Bobbin outside = inside with
        {
            CoreLengthM = inside.CoreLengthM + 2 * b,
            CoreWidthM = inside.CoreWidthM + 2 * b,
            EndRadiusM = inside.EndRadiusM + b,
        };
        CoilField last = new(coil with { Bobbin = outside, BuildM = 1e-3 * b }, 1, 4);
        double At(CoilField field) => field.ComputeField(coil.Position.XM, coil.Position.YM, coil.Position.ZM).ZM;
        return (At(last) - At(winding)) / (b * At(winding));
    }

    /// <summary>Change of the winding's own turns × area with the build, m²/m, signed.</summary>
    public static double BareByBuild(FieldCoil coil)
    {
        double step = 0.01 * coil.BuildM;
        return coil.Sign
            * coil.Turns
            * (AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM + step) - AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM - step))
            / (2 * step);
    }

    /// <summary>
    /// The cores' share of an area moves with permeability as their share of the inductance does; signed like the area, m².
    /// </summary>
    /// <param name="coil">The coil.</param>
    /// <param name="area">Its turns × area, m².</param>
    /// <param name="coreSpread">Half-width of the cores' share of its inductance over that share.</param>
    public static double Spread(FieldCoil coil, double area, double coreSpread) =>
        coreSpread > 0
            ? Math.CopySign((area - coil.Sign * coil.Turns * AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM)) * coreSpread, area)
            : 0;
}
