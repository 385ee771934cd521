using System.Numerics;

namespace Coilwright.Physics.Circuit;

/// <summary>A series branch from tables of L(f) and R(f): linear in log f between the entries, constant outside.</summary>
public sealed class TabulatedBranch : ISeriesBranch
{
    private readonly double[] _logHz;
    private readonly double[] _henry;
    private readonly double[] _ohm;

    /// <param name="frequenciesHz">Rising, positive, Hz.</param>
    /// <param name="inductanceH">Series inductance at each, H.</param>
    /// <param name="resistanceOhm">Series resistance at each, DC resistance included, Ω.</param>
    public TabulatedBranch(IReadOnlyList<double> frequenciesHz, IReadOnlyList<double> inductanceH, IReadOnlyList<double> resistanceOhm)
    {
        if (frequenciesHz.Count == 0 || frequenciesHz.Count != inductanceH.Count || frequenciesHz.Count != resistanceOhm.Count)
        {
            throw new ArgumentException("The tables must be of one length and not empty.", nameof(frequenciesHz));
        }

        _logHz = [.. frequenciesHz.Select(hz => Math.Log(hz))];
        _henry = [.. inductanceH];
        _ohm = [.. resistanceOhm];
    }

    /// <inheritdoc/>
    public Complex ImpedanceOhm(double frequencyHz)
    {
        double at = Math.Log(frequencyHz);
        int above = Array.BinarySearch(_logHz, at);
        above = above < 0 ? ~above : above;
        int below = Math.Max(0, Math.Min(above, _logHz.Length) - 1);
        above = Math.Min(above, _logHz.Length - 1);
        double weight = above > below ? Math.Clamp((at - _logHz[below]) / (_logHz[above] - _logHz[below]), 0, 1) : 0;
        double ohm = _ohm[below] + weight * (_ohm[above] - _ohm[below]);
        double henry = _henry[below] + weight * (_henry[above] - _henry[below]);
        return new Complex(ohm, 2 * Math.PI * frequencyHz * henry);
    }
}
