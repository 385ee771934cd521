using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>What a bridge or meter sees between a bare pickup's two wires: the series branch with capacitance and loss across it.</summary>
public static class PickupImpedance
{
    /// <summary>Complex impedance, Ω.</summary>
    /// <param name="pickup">The pickup.</param>
    /// <param name="frequencyHz">Frequency, Hz, above zero.</param>
    public static Complex Ohm(LumpedPickup pickup, double frequencyHz) =>
        Ohm(pickup.ImpedanceOhm(frequencyHz), pickup.CapacitanceF, pickup.ParallelLossOhm, frequencyHz);

    /// <summary>The same from a series branch's own impedance at that frequency.</summary>
    /// <param name="series">Impedance of the series branch there, Ω.</param>
    /// <param name="capacitanceF">Capacitance across it, F, from zero up.</param>
    /// <param name="parallelLossOhm">Loss across it, Ω, above zero; null for none.</param>
    /// <param name="frequencyHz">Frequency, Hz, above zero.</param>
    public static Complex Ohm(Complex series, double capacitanceF, double? parallelLossOhm, double frequencyHz) =>
        series / (1 + series * new Complex(parallelLossOhm is { } loss ? 1 / loss : 0, 2 * Math.PI * frequencyHz * capacitanceF));

    /// <summary>
    /// Inductance that a meter shows in its series setting, H: Im Z/ω; above the true one below the resonance, negative above it.
    /// </summary>
    /// <param name="pickup">The pickup.</param>
    /// <param name="frequencyHz">Frequency, Hz, above zero.</param>
    public static double ApparentInductanceH(LumpedPickup pickup, double frequencyHz) =>
        Ohm(pickup, frequencyHz).Imaginary / (2 * Math.PI * frequencyHz);
}
