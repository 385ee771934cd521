using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>
/// Fits a pickup to a measured response behind a known load. A gain has no scale of impedance of its own: only a known resistance, in the
/// coil or in the load, gives R, L and C apart.
/// </summary>
/// <remarks>
/// Residual: gain in dB, and, where measured, phase in the unit in which a small turn weighs like a small change of gain (8.69 dB a
/// radian). One level in dB is free.
/// </remarks>
public static class GainFit
{
    private const double LeastResidualDb = 1e-5;
    private const double DbPerRadian = 8.685889638065035;
    private const double Step = 1e-5;

    /// <summary>
    /// A usual coil's resistance, Ω: where a fit starts, and what its scale leans on by a millionth where the curve tells none.
    /// </summary>
    private const double UsualOhm = 7000;

    /// <summary>Chooses the parts and fits them.</summary>
    /// <param name="curve">A curve of gain with at least six points.</param>
    /// <param name="load">What hung on the pickup.</param>
    /// <param name="resistanceOhm">The winding's DC resistance as measured; null to fit it.</param>
    /// <param name="eddyCount">Eddy branches, 0…2; null lets the data decide between none and one.</param>
    public static CurveFit Fit(MeasuredCurve curve, LoadCircuit load, double? resistanceOhm, int? eddyCount = null)
    {
        CurveFit? best = null;
        double least = double.PositiveInfinity;
        foreach (int eddies in eddyCount is { } count ? [count] : (int[])[0, 1])
        {
            foreach (bool loss in (bool[])[false, true])
            {
                PickupParts parts = new(eddies, loss);
                int residuals = curve.Count * (curve.PhaseDegrees is null ? 1 : 2);
                if (residuals <= parts.Count + 1)
                {
                    continue;
                }

                CurveFit fit = FitParts(curve, load, resistanceOhm, parts);
                double criterion =
                    residuals * Math.Log(fit.Fit.ResidualSum / residuals + LeastResidualDb * LeastResidualDb)
                    + parts.Count * Math.Log(residuals);
                if (best is null || (criterion < least - 6 && fit.Untold.Count <= best.Untold.Count))
                {
                    (best, least) = (fit, criterion);
                }
            }
        }

        return best ?? throw new ArgumentException("Too few points.", nameof(curve));
    }

    private static CurveFit FitParts(MeasuredCurve curve, LoadCircuit load, double? resistanceOhm, PickupParts parts)
    {
        int residuals = curve.Count * (curve.PhaseDegrees is null ? 1 : 2);
        // A known resistance is held by a residual of its own that allows a tenth of a per mil.
        double hold = resistanceOhm is null ? 1e-6 : 1e4;
        LeastSquaresProblem problem = (p, into, jacobian) =>
        {
            double[] at = p.ToArray();
            Residuals(curve, load, parts, at, into[..residuals]);
            into[residuals] = (at[PickupParts.Resistance] - Math.Log(resistanceOhm ?? UsualOhm)) * hold;
            if (jacobian.Length == 0)
            {
                return;
            }

            double[] up = new double[residuals],
                down = new double[residuals];
            for (int i = 0; i < at.Length; i++)
            {
                at[i] += Step;
                Residuals(curve, load, parts, at, up);
                at[i] -= 2 * Step;
                Residuals(curve, load, parts, at, down);
                at[i] += Step;
                Span<double> column = jacobian.Slice(i * (residuals + 1), residuals + 1);
                for (int k = 0; k < residuals; k++)
                {
                    column[k] = (up[k] - down[k]) / (2 * Step);
                }

                column[residuals] = i == PickupParts.Resistance ? hold : 0;
            }
        };
        LeastSquaresFit? best = null;
        foreach (double[] start in Starts(curve, load, resistanceOhm ?? UsualOhm, parts))
        {
            LeastSquaresFit fit = LevenbergMarquardt.Minimise(problem, residuals + 1, start, mostSteps: 60, firstReach: 0.1);
            best = best is null || fit.ResidualSum < best.ResidualSum ? fit : best;
        }

        return new CurveFit(parts, parts.CreatePickup(best!.Parameters), best, CurveFit.FindUntold(parts, best));
    }

    private static void Residuals(MeasuredCurve curve, LoadCircuit load, PickupParts parts, double[] p, Span<double> into)
    {
        // No step of the fit may leave what the engine takes; no pickup lies near these ends.
        double Hold(double value, int i) =>
            i switch
            {
                PickupParts.Capacitance => Math.Clamp(value, -40, -7),
                _ when parts.IsInductance(i) => Math.Clamp(value, -6, 11),
                _ => Math.Clamp(value, -6, 20),
            };
        double[] held = [.. p.Take(parts.Count).Select(Hold)];
        Response response = PickupResponse.Compute(parts.CreatePickup(held), load, curve.FrequenciesHz);
        double level = p[parts.Count];
        for (int k = 0; k < curve.Count; k++)
        {
            ResponsePoint point = response.Points[k];
            into[k] = point.GainDb + response.LowFrequencyGainDb + level - curve.GainDb![k];
            if (curve.PhaseDegrees is { } phase)
            {
                into[curve.Count + k] = Math.IEEERemainder(point.PhaseDegrees - phase[k], 360) * (Math.PI / 180) * DbPerRadian;
            }
        }
    }

    private static IEnumerable<double[]> Starts(MeasuredCurve curve, LoadCircuit load, double ohm, PickupParts parts)
    {
        int top = Enumerable.Range(0, curve.Count).MaxBy(i => curve.GainDb![i]);
        double omega = 2 * Math.PI * (top > 0 ? curve.FrequenciesHz[top] : Math.Sqrt(curve.FrequenciesHz[0] * curve.FrequenciesHz[^1]));
        foreach (double henry in (double[])[1.2, 3, 7])
        {
            double[] start = new double[parts.Count + 1];
            start[PickupParts.Resistance] = Math.Log(ohm);
            start[PickupParts.Inductance] = Math.Log(henry);
            start[PickupParts.Capacitance] = Math.Log(
                Math.Max(30e-12, 1 / (omega * omega * henry) - load.CableCapacitanceF - load.InputCapacitanceF)
            );
            if (parts.HasLoss)
            {
                start[PickupParts.Loss] = Math.Log(10 * omega * henry);
            }

            for (int i = 0; i < parts.EddyCount; i++)
            {
                start[parts.EddyInductance(i)] = Math.Log(0.2 * henry);
                start[parts.EddyInductance(i) + 1] = Math.Log(omega * henry * Math.Pow(5, i));
            }

            start[parts.Count] = curve.GainDb![0];
            yield return start;
        }
    }
}
