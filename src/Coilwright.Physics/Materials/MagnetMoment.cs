namespace Coilwright.Physics.Materials;

/// <summary>How strong all magnets of a pickup are together, seen from far away.</summary>
public static class MagnetMoment
{
    private const double VacuumPermeability = 4e-7 * Math.PI;

    /// <summary>The sum of the sizes of all magnets' dipole moments, at the upper end of their intervals, A·m².</summary>
    /// <param name="model">The pickup.</param>
    /// <remarks>
    /// m = J·V/µ0, derived, for each magnet, with its source term J; permeable parts around it can raise the moment, so the recoil
    /// permeability multiplies it,
    /// which a magnet short against its width never reaches. An upper bound: magnets that face each other cancel from afar.
    /// </remarks>
    public static double UpperBoundAm2(PickupModel model)
    {
        double sum = 0;
        foreach (PoleModel pole in model.Coils.SelectMany(coil => coil.Poles))
        {
            double areaM2 = pole.Shape == PoleShape.Blade ? pole.WidthM * pole.DiameterM : Math.PI * pole.DiameterM * pole.DiameterM / 4;
            sum +=
                pole.PositionsM.Count
                * areaM2
                * pole.LengthM
                * Math.Max(Math.Abs(pole.PolarisationT.Low), Math.Abs(pole.PolarisationT.High))
                * pole.RelativePermeability.High
                / VacuumPermeability;
        }

        foreach (BarModel bar in model.Bars)
        {
            double sizeT = Math.Sqrt(
                bar.PolarisationT.XM * bar.PolarisationT.XM
                    + bar.PolarisationT.YM * bar.PolarisationT.YM
                    + bar.PolarisationT.ZM * bar.PolarisationT.ZM
            );
            sum +=
                bar.SizeM.XM
                * bar.SizeM.YM
                * bar.SizeM.ZM
                * sizeT
                * (1 + bar.PolarisationSpread)
                * bar.RelativePermeability.High
                / VacuumPermeability;
        }

        return sum;
    }
}
