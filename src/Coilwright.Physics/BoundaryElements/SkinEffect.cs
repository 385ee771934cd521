using System.Numerics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>Complex permeability of a conducting part in a field along it: eddy currents push the flux out of its middle.</summary>
/// <remarks>
/// Long cylinder: µ·2J₁(kR)/(kR·J₀(kR)); long slab of half thickness d: µ·tan(kd)/(kd); k² = −jωµ₀µσ. Standard results for an even surface
/// field [Eddies].
/// </remarks>
public static class SkinEffect
{
    private const double Mu0 = 4e-7 * Math.PI;

    /// <summary>Complex relative permeability at a frequency.</summary>
    /// <param name="relative">Static relative permeability, at least 1.</param>
    /// <param name="conductivitySPerM">Conductivity, S/m; 0 leaves the static value.</param>
    /// <param name="shape">Round or flat section.</param>
    /// <param name="halfThicknessM">Radius or half thickness, m.</param>
    /// <param name="frequencyHz">Frequency, Hz.</param>
    public static Complex Permeability(
        double relative,
        double conductivitySPerM,
        SkinShape shape,
        double halfThicknessM,
        double frequencyHz
    )
    {
        Complex square = new(0, -2 * Math.PI * frequencyHz * Mu0 * relative * conductivitySPerM * halfThicknessM * halfThicknessM);
        return relative * (shape == SkinShape.Cylinder ? CylinderRatio(square) : SlabRatio(square));
    }

    /// <summary>2J₁(z)/(z·J₀(z)) from z² by the continued fraction 1/(1 − z²/(2·4 …)), stable for every |z|.</summary>
    /// <param name="square">z².</param>
    public static Complex CylinderRatio(Complex square)
    {
        // J₁/J₀ = (z/2)/(1 − (z²/4)/(1·2)/(1 − (z²/4)/(2·3)/(1 − …))), from the far end.
        int terms = 12 + (int)(1.5 * Math.Sqrt(square.Magnitude));
        Complex tail = 1,
            quarter = square / 4;
        for (int n = terms; n >= 1; n--)
        {
            tail = 1 - quarter / (n * (n + 1.0)) / tail;
        }

        return 1 / tail;
    }

    /// <summary>tan(z)/z from z², by exponentials that cannot overflow: with Im z &lt; 0, e^(−2jz) decays.</summary>
    private static Complex SlabRatio(Complex square)
    {
        if (square.Magnitude < 1e-6)
        {
            return 1 + square / 3;
        }

        Complex z = Complex.Sqrt(square);
        z = z.Imaginary > 0 ? -z : z;
        Complex decay = Complex.Exp(-2 * Complex.ImaginaryOne * z);
        return -Complex.ImaginaryOne * (1 - decay) / ((1 + decay) * z);
    }
}
