namespace Coilwright.Analysis.Curves;

/// <summary>What the winding's own capacitance does to an inductance that a meter reads below the resonance.</summary>
/// <remarks>
/// L and C side by side look like L/(1 − (f/f₀)²) (arithmetic; losses left out). Examples at f₀ = 9.2 kHz: +0.02 % at 120 Hz, +1.2 % at 1
/// kHz.
/// Near f₀ a small error of f₀ becomes a large one of L; above it the reading has no meaning.
/// </remarks>
public static class ApparentInductance
{
    /// <summary>
    /// Readings whose error is larger are refused: our assumption, half of what coil-to-coil scatter of a hand-wound coil may be.
    /// </summary>
    public const double MostError = 0.10;

    /// <summary>By what part the reading is too large; infinite at and above the resonance.</summary>
    public static double Error(double readAtHz, double resonanceHz)
    {
        double square = Math.Pow(readAtHz / resonanceHz, 2);
        return square < 1 ? square / (1 - square) : double.PositiveInfinity;
    }

    /// <summary>The inductance freed of the error, H; null when read too near the resonance.</summary>
    public static double? Corrected(double readH, double readAtHz, double resonanceHz) =>
        Error(readAtHz, resonanceHz) is var error && error <= MostError ? readH / (1 + error) : null;

    /// <summary>Highest frequency at which a reading is still accepted, Hz.</summary>
    public static double HighestHz(double resonanceHz) => resonanceHz * Math.Sqrt(MostError / (1 + MostError));
}
