using System.Numerics;

namespace Coilwright.Physics.Fields;

/// <summary>Effective permeability of a long conducting cylinder in an axial alternating field.</summary>
public static class CylinderPermeability
{
    private const double Mu0 = 4e-7 * Math.PI;

    /// <summary>µ·2·J1(kR)/(kR·J0(kR)), k² = −jωµ0µσ; relative, complex.</summary>
    /// <remarks>J1/J0 by its continued fraction, stable for every argument. Standard result for an infinite cylinder (memory; checked against finite elements).</remarks>
    public static Complex Effective(double relativePermeability, double conductivitySPerM, double radiusM, double frequencyHz)
    {
        Complex kR = Complex.Sqrt(new Complex(0, -2 * Math.PI * frequencyHz * Mu0 * relativePermeability * conductivitySPerM)) * radiusM;
        if (kR.Magnitude < 1e-6)
        {
            return relativePermeability;
        }

        // J1(x)/J0(x) = 1/(2/x − 1/(4/x − 1/(6/x − …))), from the far end.
        int terms = 40 + (int)(2 * kR.Magnitude);
        Complex tail = 2 * terms / kR;
        for (int n = terms - 1; n >= 1; n--)
        {
            tail = 2 * n / kR - 1 / tail;
        }

        return relativePermeability * 2 / (kR * tail);
    }
}
