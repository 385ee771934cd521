using System.Numerics;

namespace Coilwright.Analysis.Curves;

/// <summary>First guesses for a fit of impedance, read off the curve.</summary>
internal static class ImpedanceStart
{
    /// <summary>Starts for given parts: one, or with eddy branches one for each guess of where their knees lie.</summary>
    public static IEnumerable<double[]> For(PickupParts parts, MeasuredCurve curve)
    {
        Complex[] z = curve.ImpedanceOhm!;
        double[] hz = curve.FrequenciesHz;
        int top = Enumerable.Range(0, hz.Length).MaxBy(i => z[i].Magnitude);
        double ohm = Math.Max(z.Min(one => one.Real), 1e-3 * z[0].Magnitude);
        ohm = Math.Max(ohm, 1e-3);
        bool hasTop = top > 0 && top < hz.Length - 1;
        double topOmega = 2 * Math.PI * hz[top],
            henry = Henry(curve, hasTop ? hz[top] : double.PositiveInfinity);
        double farad = hasTop ? 1 / (topOmega * topOmega * henry) : Math.Min(100e-12, 0.1 / (topOmega * topOmega * henry));
        double loss = hasTop ? 3 * z[top].Magnitude : 30 * topOmega * henry;
        double[] knees = parts.EddyCount == 0 ? [1] : [0.3, 1, 4];
        foreach (double knee in knees)
        {
            double[] start = new double[parts.Count];
            start[PickupParts.Resistance] = ohm;
            start[PickupParts.Inductance] = henry * (1 - Math.Min(0.6, 0.25 * parts.EddyCount));
            start[PickupParts.Capacitance] = farad;
            if (parts.HasLoss)
            {
                start[PickupParts.Loss] = loss;
            }

            double middle = Math.Sqrt(hz[0] * hz[^1]) * 2 * Math.PI;
            for (int i = 0; i < parts.EddyCount; i++)
            {
                double share = henry * 0.25 / Math.Max(1, parts.EddyCount - 1);
                start[parts.EddyInductance(i)] = share;
                start[parts.EddyInductance(i) + 1] = share * middle * knee * Math.Pow(6, i - (parts.EddyCount - 1) / 2.0) * 3;
            }

            yield return Array.ConvertAll(start, Math.Log);
        }
    }

    /// <summary>Inductance far below the top, freed of what the capacitance does: L = Im Z/ω·(1 − (f/f₀)²).</summary>
    private static double Henry(MeasuredCurve curve, double topHz)
    {
        double[] hz = curve.FrequenciesHz;
        double[] seen =
        [
            .. Enumerable
                .Range(0, hz.Length)
                .Where(i => hz[i] < 0.7 * topHz)
                .Select(i => curve.ApparentInductanceH(i) * (1 - hz[i] * hz[i] / (topHz * topHz)))
                .Where(h => h > 0)
                .Order(),
        ];
        return seen.Length > 0 ? seen[seen.Length / 2] : curve.ImpedanceOhm!.Max(z => z.Magnitude) / (2 * Math.PI * hz[^1]);
    }
}
