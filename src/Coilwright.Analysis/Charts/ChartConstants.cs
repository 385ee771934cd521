using System.Collections.Concurrent;
using Coilwright.Physics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Charts;

/// <summary>Factors of control charts for normal values, computed and not copied from a table.</summary>
/// <param name="Size">Values in a subgroup, 2…50.</param>
/// <param name="D2">Mean of the range over sigma: ∫ 1 − Φⁿ − (1−Φ)ⁿ dx.</param>
/// <param name="D3">Standard deviation of the range over sigma, from the distribution of the range.</param>
/// <param name="C4">Mean of the sample standard deviation over sigma: √(2/(n−1))·Γ(n/2)/Γ((n−1)/2).</param>
/// <remarks>
/// Tippett 1925 for the range (from memory). Checked against a printed table of factors for 2…25 values [ChartFactors]:
/// tests/Reference/charts/constants.csv.
/// </remarks>
public sealed record ChartConstants(int Size, double D2, double D3, double C4)
{
    private static readonly ConcurrentDictionary<int, ChartConstants> s_known = new();

    /// <summary>Factor of the mean range for the limits of means.</summary>
    public double A2 => 3 / (D2 * Math.Sqrt(Size));

    /// <summary>Factor of the mean standard deviation for the limits of means.</summary>
    public double A3 => 3 / (C4 * Math.Sqrt(Size));

    /// <summary>Lower limit of standard deviations over their mean; never below zero.</summary>
    public double B3 => Math.Max(0, 1 - SpreadOfS);

    /// <summary>Upper limit of standard deviations over their mean.</summary>
    public double B4 => 1 + SpreadOfS;

    /// <summary>Lower limit of ranges over their mean, D₃ of the tables; never below zero.</summary>
    public double LowerRange => Math.Max(0, 1 - 3 * D3 / D2);

    /// <summary>Upper limit of ranges over their mean, D₄ of the tables.</summary>
    public double UpperRange => 1 + 3 * D3 / D2;

    /// <summary>Factor of the mean moving range for the limits of single values.</summary>
    public double E2 => 3 / D2;

    /// <summary>Mean-square factor of one range: √(d₂² + d₃²), for a sigma from a single range.</summary>
    public double D2OfOneRange => Math.Sqrt(D2 * D2 + D3 * D3);

    private double SpreadOfS => 3 * Math.Sqrt(1 - C4 * C4) / C4;

    /// <summary>The factors for a subgroup size, 2…50.</summary>
    public static ChartConstants ForSize(int size) => s_known.GetOrAdd((int)Require.InRange(size, 2, 50), Compute);

    private static ChartConstants Compute(int n)
    {
        const double Step = 0.02,
            Reach = 8.5,
            RangeStep = 0.02,
            LargestRange = 14;
        int points = (int)Math.Round(2 * Reach / Step) + 1;
        double[] density = [.. Enumerable.Range(0, points).Select(k => n * Step * Normal.PDF(0, 1, -Reach + k * Step))];
        double[] cumulative =
        [
            .. Enumerable.Range(0, points + (int)Math.Round(LargestRange / Step) + 1).Select(k => Normal.CDF(0, 1, -Reach + k * Step)),
        ];
        double mean = 0,
            square = 0;
        for (int k = 0; k < points; k++)
        {
            // the trapezoid rule is exact to rounding for such tails
            mean += Step * (1 - Math.Pow(cumulative[k], n) - Math.Pow(1 - cumulative[k], n));
        }

        for (int w = 1; w <= (int)Math.Round(LargestRange / RangeStep); w++)
        {
            double below = 0;
            for (int k = 0; k < points; k++)
            {
                below += density[k] * Math.Pow(cumulative[k + w] - cumulative[k], n - 1);
            }

            square += RangeStep / 3 * (w % 2 == 1 ? 4 : 2) * 2 * w * RangeStep * (1 - below); // Simpson; both ends are nought
        }

        double c4 = Math.Sqrt(2.0 / (n - 1)) * Math.Exp(SpecialFunctions.GammaLn(n / 2.0) - SpecialFunctions.GammaLn((n - 1) / 2.0));
        return new ChartConstants(n, mean, Math.Sqrt(square - mean * mean), c4);
    }
}
