namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>A length's rates at the frequencies of one forecast.</summary>
/// <param name="RealH">Real parts of the inductances, H/m.</param>
/// <param name="LossPerM">Logarithm of each coil's loss, 1/m.</param>
internal sealed record SpectrumRate(double[][,] RealH, double[][] LossPerM)
{
    /// <summary>Between the frequencies of the rates straight in the logarithm of frequency; beyond them the ends hold.</summary>
    public static SpectrumRate At(IReadOnlyList<double> frequenciesHz, SizeRate rate)
    {
        (int Below, double Part)[] places = [.. frequenciesHz.Select(hz => Place(rate.FrequenciesHz, hz))];
        return new SpectrumRate(
            [.. places.Select(at => Mixed(rate.SpectrumH[at.Below], rate.SpectrumH[Above(rate, at.Below)], at.Part))],
            [
                .. places.Select(at =>
                    rate.LossPerM[at.Below].Zip(rate.LossPerM[Above(rate, at.Below)], (low, high) => low + at.Part * (high - low)).ToArray()
                ),
            ]
        );
    }

    private static int Above(SizeRate rate, int below) => Math.Min(below + 1, rate.FrequenciesHz.Count - 1);

    private static (int Below, double Part) Place(IReadOnlyList<double> all, double hz)
    {
        int below = 0;
        while (below < all.Count - 2 && all[below + 1] < hz)
        {
            below++;
        }

        double part = all.Count > 1 ? Math.Log(hz / all[below]) / Math.Log(all[below + 1] / all[below]) : 0;
        return (below, Math.Clamp(part, 0, 1));
    }

    private static double[,] Mixed(double[,] low, double[,] high, double part)
    {
        int columns = low.GetLength(1);
        double[,] mixed = new double[low.GetLength(0), columns];
        for (int k = 0; k < mixed.Length; k++)
        {
            (int i, int j) = (k / columns, k % columns);
            mixed[i, j] = low[i, j] + part * (high[i, j] - low[i, j]);
        }

        return mixed;
    }
}
