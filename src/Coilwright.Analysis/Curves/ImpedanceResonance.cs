using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>The frequencies that are called resonance of a bare pickup's impedance; they differ, so each carries its name.</summary>
/// <param name="UndampedHz">1/(2π√(LC)) with the main inductance, Hz.</param>
/// <param name="ZeroPhaseHz">Where the impedance is real, Hz; null where it never is.</param>
/// <param name="TopHz">Where its magnitude is largest, Hz.</param>
/// <param name="TopOhm">How large, Ω.</param>
/// <param name="Q">Height over the inductive reactance there: |Z|/(ωL) at the top, with the inductance that acts there.</param>
public sealed record ImpedanceResonance(double UndampedHz, double? ZeroPhaseHz, double TopHz, double TopOhm, double Q)
{
    /// <summary>Finds them between a thirtieth and three times the undamped frequency.</summary>
    public static ImpedanceResonance Find(LumpedPickup pickup)
    {
        double undamped = 1 / (2 * Math.PI * Math.Sqrt(pickup.InductanceH * pickup.CapacitanceF));
        Complex Z(double hz) =>
            1
            / (
                1 / pickup.ImpedanceOhm(hz)
                + new Complex(pickup.ParallelLossOhm is { } loss ? 1 / loss : 0, 2 * Math.PI * hz * pickup.CapacitanceF)
            );
        double[] grid = PickupResponse.LogFrequencies(undamped / 30, undamped * 3, 600);
        int top = Enumerable.Range(1, grid.Length - 2).MaxBy(i => Z(grid[i]).Magnitude);
        double low = grid[top - 1],
            high = grid[top + 1];
        for (int i = 0; i < 80; i++)
        {
            double left = low + (high - low) * 0.381966011250105,
                right = high - (high - low) * 0.381966011250105;
            (low, high) = Z(left).Magnitude > Z(right).Magnitude ? (low, right) : (left, high);
        }

        double topHz = (low + high) / 2;
        double inductance = pickup.ImpedanceOhm(topHz).Imaginary;
        return new ImpedanceResonance(undamped, ZeroPhase(Z, grid), topHz, Z(topHz).Magnitude, Z(topHz).Magnitude / inductance);
    }

    private static double? ZeroPhase(Func<double, Complex> z, double[] grid)
    {
        for (int i = grid.Length - 2; i >= 0; i--)
        {
            if (z(grid[i]).Imaginary > 0 && z(grid[i + 1]).Imaginary <= 0)
            {
                double low = grid[i],
                    high = grid[i + 1];
                for (int k = 0; k < 60; k++)
                {
                    double middle = (low + high) / 2;
                    (low, high) = z(middle).Imaginary > 0 ? (middle, high) : (low, middle);
                }

                return (low + high) / 2;
            }
        }

        return null;
    }
}
