using Coilwright.Physics;

namespace Coilwright.Workshop.Magnets;

/// <summary>A pickup with all its magnets at a share of their strength: what charging them less leaves of it.</summary>
public static class MagnetStrength
{
    public static PickupModel Scaled(PickupModel model, double share) =>
        model with
        {
            Coils =
            [
                .. model.Coils.Select(coil =>
                    coil with
                    {
                        Poles = [.. coil.Poles.Select(pole => pole with { PolarisationT = Times(pole.PolarisationT, share) })],
                    }
                ),
            ],
            Bars =
            [
                .. model.Bars.Select(bar =>
                    bar with
                    {
                        PolarisationT = new Vector3M(
                            share * bar.PolarisationT.XM,
                            share * bar.PolarisationT.YM,
                            share * bar.PolarisationT.ZM
                        ),
                    }
                ),
            ],
        };

    private static Estimate Times(Estimate full, double share) =>
        full with
        {
            Value = share * full.Value,
            Low = share * full.Low,
            High = share * full.High,
        };
}
