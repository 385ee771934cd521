using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>
/// Which parts a fit may use. Its parameters are the logarithms of their values, in the order R, L, C, loss, then L and R of each eddy
/// branch: no part can turn negative.
/// </summary>
/// <param name="EddyCount">Eddy branches.</param>
/// <param name="HasLoss">Whether a loss resistance lies across the terminals.</param>
public readonly record struct PickupParts(int EddyCount, bool HasLoss)
{
    /// <summary>Place of the series resistance, Ω.</summary>
    public const int Resistance = 0;

    /// <summary>Place of the series inductance, H.</summary>
    public const int Inductance = 1;

    /// <summary>Place of the capacitance across the terminals, F.</summary>
    public const int Capacitance = 2;

    /// <summary>Place of the loss resistance across the terminals, Ω, where there is one.</summary>
    public const int Loss = 3;

    /// <summary>Number of parameters.</summary>
    public int Count => 3 + (HasLoss ? 1 : 0) + 2 * EddyCount;

    /// <summary>Place of an eddy branch's inductance, H; its resistance, Ω, comes next.</summary>
    /// <param name="branch">Number of the branch, from 0.</param>
    public int EddyInductance(int branch) => (HasLoss ? 4 : 3) + 2 * branch;

    /// <summary>The pickup at these parameters; the branches in the order of their knees.</summary>
    public LumpedPickup CreatePickup(ReadOnlySpan<double> p)
    {
        EddyBranch[] eddy = new EddyBranch[EddyCount];
        for (int i = 0; i < EddyCount; i++)
        {
            eddy[i] = new EddyBranch(Math.Exp(p[EddyInductance(i)]), Math.Exp(p[EddyInductance(i) + 1]));
        }

        return new LumpedPickup(Math.Exp(p[Resistance]), Math.Exp(p[Inductance]), Math.Exp(p[Capacitance]))
        {
            Eddy = eddy,
            ParallelLossOhm = HasLoss ? Math.Exp(p[Loss]) : null,
        };
    }

    /// <summary>
    /// Of these parameters those that a plainer choice has too, in its order; null when it has parts that this one lacks.
    /// </summary>
    public double[]? Take(ReadOnlySpan<double> parameters, PickupParts plainer)
    {
        if (plainer.EddyCount > EddyCount || (plainer.HasLoss && !HasLoss))
        {
            return null;
        }

        double[] taken = new double[plainer.Count];
        for (int i = 0; i < taken.Length; i++)
        {
            taken[i] = parameters[i < plainer.EddyInductance(0) ? i : i + EddyInductance(0) - plainer.EddyInductance(0)];
        }

        return taken;
    }

    /// <summary>True for a parameter in henries.</summary>
    /// <param name="parameter">Its place, 0 to <see cref="Count"/> − 1.</param>
    public bool IsInductance(int parameter) =>
        parameter == Inductance || (parameter >= EddyInductance(0) && (parameter - EddyInductance(0)) % 2 == 0);

    /// <summary>A parameter's name as in a lumped file.</summary>
    public string NameOf(int parameter) =>
        parameter switch
        {
            Resistance => "resistance",
            Inductance => "inductance",
            Capacitance => "capacitance",
            _ when HasLoss && parameter == Loss => "parallelLoss",
            _ => EddyName(parameter - EddyInductance(0)),
        };

    private static string EddyName(int place)
    {
        string part = place % 2 == 0 ? "inductance" : "resistance";
        return FormattableString.Invariant($"eddy[{place / 2}].{part}");
    }

    /// <summary>Impedance at the terminals, and its derivative by each parameter: 1/Z = jωC + 1/Rp + 1/Zs.</summary>
    public Complex Impedance(ReadOnlySpan<double> values, double omega, Span<Complex> slopes)
    {
        Complex series = new(values[Resistance], omega * values[Inductance]);
        for (int i = 0; i < EddyCount; i++)
        {
            int at = EddyInductance(i);
            Complex reactance = new(0, omega * values[at]),
                z = reactance * values[at + 1] / (reactance + values[at + 1]);
            series += z;
            if (slopes.Length > 0)
            {
                slopes[at] = z * z / reactance;
                slopes[at + 1] = z * z / values[at + 1];
            }
        }

        double conductance = HasLoss ? 1 / values[Loss] : 0;
        Complex admittance = new(conductance, omega * values[Capacitance]),
            whole = series / (1 + series * admittance);
        if (slopes.Length > 0)
        {
            Complex inner = whole / series * (whole / series),
                outer = -whole * whole;
            slopes[Resistance] = inner * values[Resistance];
            slopes[Inductance] = inner * new Complex(0, omega * values[Inductance]);
            slopes[Capacitance] = outer * new Complex(0, omega * values[Capacitance]);
            if (HasLoss)
            {
                slopes[Loss] = -outer * conductance;
            }

            for (int i = EddyInductance(0); i < Count; i++)
            {
                slopes[i] *= inner;
            }
        }

        return whole;
    }
}
