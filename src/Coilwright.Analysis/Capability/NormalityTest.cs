using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Capability;

/// <summary>Whether values look normal, by the statistic of Anderson and Darling with mean and deviation taken from the values.</summary>
/// <param name="Statistic">A²·(1 + 0.75/n + 2.25/n²).</param>
/// <remarks>
/// Factor and critical value of Stephens 1986 (from memory) [Normality]; the false alarms are held by simulation in the tests.
/// </remarks>
public readonly record struct NormalityTest(double Statistic)
{
    /// <summary>Above this, one normal set in twenty lies.</summary>
    public const double Critical = 0.752;

    /// <summary>True when the values may be called normal: the statistic does not pass <see cref="Critical"/>.</summary>
    public bool LooksNormal => Statistic <= Critical;

    /// <summary>Null for fewer than eight values or none of them different.</summary>
    public static NormalityTest? Compute(IReadOnlyList<double> values)
    {
        int n = values.Count;
        double mean = n == 0 ? 0 : values.Average(),
            deviation = n < 2 ? 0 : Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (n - 1));
        if (n < 8 || deviation <= 0)
        {
            return null;
        }

        double[] part = [.. values.Order().Select(value => Math.Clamp(Normal.CDF(mean, deviation, value), 1e-300, 1 - 1e-16))];
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            sum += (2 * i + 1) * (Math.Log(part[i]) + Math.Log(1 - part[n - 1 - i]));
        }

        return new NormalityTest((-n - sum / n) * (1 + 0.75 / n + 2.25 / ((double)n * n)));
    }
}
