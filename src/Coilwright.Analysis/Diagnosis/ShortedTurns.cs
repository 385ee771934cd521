using System.Numerics;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>A coil with some of its turns shorted: the shorted ones are a closed secondary, coupled to the rest.</summary>
/// <remarks>
/// With ν the part shorted and L, R of the whole coil: the loop has Rs = νR and Ls = κν²L (κ ≥ 1: neighbouring turns hold together better
/// than the coil as a whole),
/// and as every turn sees the coil's mean flux, M + Ls = νL. The rest has (1−ν)R and L(1 − 2ν + κν²). Then Z = Z_rest + ω²M²/(Rs + jωLs):
/// the coupled-circuit
/// formula of any textbook of alternating currents (from memory). Losses in cores are taken to fall with the square of the turns left.
/// </remarks>
public static class ShortedTurns
{
    /// <summary>κ of a few turns side by side. Our assumption, no source.</summary>
    public const double UsualTightness = 1.3;

    /// <summary>ln of inductance and Q against the good coil.</summary>
    /// <param name="part">Part of the turns shorted, above 0, below 1.</param>
    /// <param name="reactance">ωL/R of the good coil, 0 or more, with its direct-current resistance.</param>
    /// <param name="acOverDc">AC over DC resistance of the good coil at that frequency, 1 or more.</param>
    /// <param name="tightness">
    /// κ of a few turns side by side: how much better they hold together than the coil; it is 1 when they are the whole coil.
    /// </param>
    public static (double Inductance, double Quality) Shift(
        double part,
        double reactance,
        double acOverDc = 1,
        double tightness = UsualTightness
    )
    {
        double kappa = 1 + (tightness - 1) * (1 - part),
            rest = 1 - 2 * part + kappa * part * part;
        if (reactance < 1e-9)
        {
            double dc = 1 - part + (acOverDc - 1) * (1 - part) * (1 - part);
            return (Math.Log(rest), Math.Log(rest * acOverDc / dc));
        }

        Complex seen =
            new Complex(1 - part + (acOverDc - 1) * (1 - part) * (1 - part), reactance * rest)
            + reactance * reactance * part * (1 - kappa * part) * (1 - kappa * part) / new Complex(1, reactance * kappa * part);
        return (Math.Log(seen.Imaginary / reactance), Math.Log(seen.Imaginary / seen.Real * acOverDc / reactance));
    }
}
