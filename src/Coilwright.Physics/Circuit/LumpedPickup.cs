using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>
/// A pickup as seen from its two wires: the series branch behind which the string's voltage appears, without the capacitance across it.
/// </summary>
public interface ISeriesBranch
{
    /// <summary>Series impedance R(f) + j2πf·L(f), Ω.</summary>
    Complex ImpedanceOhm(double frequencyHz);
}

/// <summary>An inductance with a resistance across it, in series with the coil: how eddy currents look from the wires.</summary>
/// <param name="InductanceH">The inductance, H, 0…100 kH; at 0 the branch is a wire.</param>
/// <param name="ResistanceOhm">The resistance across it, Ω, 0…1 TΩ; at 0 the branch is a wire.</param>
public readonly record struct EddyBranch(double InductanceH, double ResistanceOhm);

/// <summary>R, L and eddy branches in series; C and a loss resistance across the terminals. SI units.</summary>
/// <param name="ResistanceOhm">Series resistance, Ω, 1 µΩ…1 GΩ.</param>
/// <param name="InductanceH">Series inductance without the eddy branches, H, 0…100 kH.</param>
/// <param name="CapacitanceF">Capacitance across the terminals, F, 0…1 mF.</param>
public sealed record LumpedPickup(double ResistanceOhm, double InductanceH, double CapacitanceF) : ISeriesBranch
{
    /// <summary>Eddy branches in series with the coil, in any order; empty for none.</summary>
    public IReadOnlyList<EddyBranch> Eddy { get; init; } = [];

    /// <summary>Loss resistance across the terminals, Ω; null for none.</summary>
    public double? ParallelLossOhm { get; init; }

    /// <inheritdoc/>
    public Complex ImpedanceOhm(double frequencyHz)
    {
        double omega = 2 * Math.PI * frequencyHz;
        Complex sum = new(ResistanceOhm, omega * InductanceH);
        foreach (EddyBranch branch in Eddy)
        {
            if (branch.ResistanceOhm <= 0)
            {
                continue; // shorted: no voltage across it
            }

            Complex reactance = new(0, omega * branch.InductanceH);
            sum += reactance * branch.ResistanceOhm / (branch.ResistanceOhm + reactance);
        }

        return sum;
    }
}
