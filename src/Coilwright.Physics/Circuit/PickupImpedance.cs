using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>What a bridge or meter sees between a bare pickup's two wires: the series branch with capacitance and loss across it.</summary>
public static class PickupImpedance
{
    /// <summary>Complex impedance, Ω.</summary>
    /// <param name="pickup">The pickup.</param>
    /// <param name="frequencyHz">Frequency, Hz, above zero.</param>
    public static Complex Ohm(LumpedPickup pickup, double frequencyHz)
    {
        Complex series = pickup.ImpedanceOhm(frequencyHz);
        return series
            / (
                1 + series * new Complex(pickup.ParallelLossOhm is { } loss ? 1 / loss : 0, 2 * Math.PI * frequencyHz * pickup.CapacitanceF)
            );
    }

    /// <summary>
    /// Inductance that a meter shows in its series setting, H: Im Z/ω; above the true one below the resonance, negative above it.
    /// </summary>
    /// <param name="pickup">The pickup.</param>
    /// <param name="frequencyHz">Frequency, Hz, above zero.</param>
    public static double ApparentInductanceH(LumpedPickup pickup, double frequencyHz) =>
        Ohm(pickup, frequencyHz).Imaginary / (2 * Math.PI * frequencyHz);
}
