using System.Numerics;

namespace Coilwright.Analysis.Curves;

/// <summary>A measured curve, sorted by frequency: complex impedance, or gain with or without phase.</summary>
/// <param name="FrequenciesHz">Strictly rising, Hz.</param>
public sealed record MeasuredCurve(double[] FrequenciesHz)
{
    /// <summary>Complex impedance, Ω; null for a curve of gain.</summary>
    public Complex[]? ImpedanceOhm { get; init; }

    /// <summary>Gain, dB relative to anything constant; null for a curve of impedance.</summary>
    public double[]? GainDb { get; init; }

    /// <summary>Phase of a gain, degrees; null when not measured.</summary>
    public double[]? PhaseDegrees { get; init; }

    /// <summary>Number of points.</summary>
    public int Count => FrequenciesHz.Length;

    /// <summary>Inductance that a meter shows in its series setting, H: Im Z/ω, with all that the capacitance does to it.</summary>
    public double ApparentInductanceH(int i) => ImpedanceOhm![i].Imaginary / (2 * Math.PI * FrequenciesHz[i]);
}
