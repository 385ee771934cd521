using Coilwright.Physics;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>What a meter in series mode shows of a coil whose own capacitance lies across it.</summary>
/// <remarks>
/// Z = (R + jωL)/(1 − ω²LC + jωRC), and from it L′ = (L(1 − ω²LC) − R²C)/D and Q′ = (ωL(1 − ω²LC) − ωR²C)/R with D = (1 − ω²LC)² + (ωRC)²:
/// the parallel circuit of any textbook of alternating currents (from memory; held against the complex impedance in the tests). Losses of
/// the capacitance are left out.
/// </remarks>
public static class MeterModel
{
    /// <summary>Inductance, H, and Q as shown.</summary>
    /// <param name="inductanceH">Series inductance of the winding, H, above 0.</param>
    /// <param name="resistanceOhm">Its series resistance at that frequency, Ω, above 0.</param>
    /// <param name="capacitanceF">Its own capacitance, F, 0 or more.</param>
    /// <param name="frequencyHz">Frequency, Hz, below resonance.</param>
    public static (double InductanceH, double Quality) Of(double inductanceH, double resistanceOhm, double capacitanceF, double frequencyHz)
    {
        Require.InRange(inductanceH, 1e-9, 1e3);
        Require.InRange(resistanceOhm, 1e-6, 1e9);
        double omega = 2 * Math.PI * frequencyHz,
            near = Nearness(inductanceH, capacitanceF, frequencyHz),
            across = omega * resistanceOhm * capacitanceF;
        double numerator = inductanceH * (1 - near) - resistanceOhm * resistanceOhm * capacitanceF;
        return (numerator / ((1 - near) * (1 - near) + across * across), omega * numerator / resistanceOhm);
    }

    /// <summary>ω²LC: 0 far below resonance, 1 at it.</summary>
    public static double Nearness(double inductanceH, double capacitanceF, double frequencyHz) =>
        Math.Pow(2 * Math.PI * frequencyHz, 2) * inductanceH * capacitanceF;
}
