using Coilwright.Physics;

namespace Coilwright.Analysis.Curves;

/// <summary>A resonance with a known capacitor across the pickup.</summary>
/// <param name="AddedF">The capacitor, F; 0 for the bare pickup.</param>
/// <param name="AddedDeviationF">Its standard deviation, F.</param>
/// <param name="ResonanceHz">Where the peak stands, Hz.</param>
/// <param name="ResonanceDeviationHz">Its standard deviation, Hz.</param>
public readonly record struct ResonanceReading(double AddedF, double AddedDeviationF, double ResonanceHz, double ResonanceDeviationHz);

/// <summary>Inductance and own capacitance from resonances with known capacitors added.</summary>
/// <remarks>
/// 1/(2πf)² = L·(C + added): a straight line in the added capacitance [AddedC]. Two readings give it exactly, more by weighted least
/// squares.
/// Intervals: first order over the readings. With the DC resistance given, the top of a gain curve is moved up to the undamped resonance by
/// R²/(2L²) in ω².
/// </remarks>
/// <param name="Inductance">L, H.</param>
/// <param name="Capacitance">C, F.</param>
public sealed record AddedCapacitors(Estimate Inductance, Estimate Capacitance)
{
    /// <summary>Undamped resonance of an inductance and the capacitance across it, Hz [AddedC].</summary>
    /// <param name="henry">Inductance, H; above 0.</param>
    /// <param name="farad">All capacitance across it, F; above 0.</param>
    /// <returns>The resonance, Hz; infinite where either is 0.</returns>
    public static double ResonanceHz(double henry, double farad) => 1 / (2 * Math.PI * Math.Sqrt(henry * farad));

    /// <summary>Solves for L and C.</summary>
    /// <param name="readings">At least two, with different capacitors.</param>
    /// <param name="resistanceOhm">The winding's DC resistance, Ω; null leaves damping out.</param>
    public static AddedCapacitors Solve(IReadOnlyList<ResonanceReading> readings, double? resistanceOhm = null)
    {
        (double henry, double farad) = Line(readings, resistanceOhm);
        double henryVariance = 0,
            faradVariance = 0;
        void Vary(int i, double deviation, Func<ResonanceReading, double, ResonanceReading> shift)
        {
            ResonanceReading[] up = [.. readings],
                down = [.. readings];
            (up[i], down[i]) = (shift(up[i], deviation), shift(down[i], -deviation));
            (double upH, double upF) = Line(up, resistanceOhm);
            (double downH, double downF) = Line(down, resistanceOhm);
            henryVariance += Math.Pow((upH - downH) / 2, 2);
            faradVariance += Math.Pow((upF - downF) / 2, 2);
        }

        for (int i = 0; i < readings.Count; i++)
        {
            Vary(i, readings[i].ResonanceDeviationHz, (reading, by) => reading with { ResonanceHz = reading.ResonanceHz + by });
            Vary(i, readings[i].AddedDeviationF, (reading, by) => reading with { AddedF = reading.AddedF + by });
        }

        return new AddedCapacitors(
            Estimate.FromDeviation(henry, Math.Sqrt(henryVariance), Basis.Measured),
            Estimate.FromDeviation(farad, Math.Sqrt(faradVariance), Basis.Measured)
        );
    }

    private static (double H, double F) Line(IReadOnlyList<ResonanceReading> readings, double? resistanceOhm)
    {
        double henry = 0,
            farad = 0;
        for (int round = 0; round < (resistanceOhm is null ? 1 : 6); round++)
        {
            double lift = henry > 0 && resistanceOhm is { } ohm ? ohm * ohm / (2 * henry * henry) : 0;
            double weights = 0,
                sumX = 0,
                sumY = 0;
            double[] y = new double[readings.Count],
                w = new double[readings.Count];
            for (int i = 0; i < y.Length; i++)
            {
                double squared = Math.Pow(2 * Math.PI * readings[i].ResonanceHz, 2) + lift;
                y[i] = 1 / squared;
                double relative = 2 * Math.Max(readings[i].ResonanceDeviationHz, 1e-9 * readings[i].ResonanceHz) / readings[i].ResonanceHz;
                w[i] = 1 / Math.Pow(y[i] * relative, 2);
                weights += w[i];
                sumX += w[i] * readings[i].AddedF;
                sumY += w[i] * y[i];
            }

            double meanX = sumX / weights,
                meanY = sumY / weights,
                xx = 0,
                xy = 0;
            for (int i = 0; i < y.Length; i++)
            {
                double x = readings[i].AddedF - meanX;
                xx += w[i] * x * x;
                xy += w[i] * x * (y[i] - meanY);
            }

            henry = xy / xx;
            farad = meanY / henry - meanX;
        }

        return (henry, farad);
    }
}
