namespace Coilwright.Analysis.Uncertainty;

/// <summary>How much of a result's variance one cause makes.</summary>
/// <param name="FirstOrder">By itself: what of the variance would go if the cause were known; 0…1.</param>
/// <param name="Total">With all its interplay: what of the variance would stay if all other causes were known; 0…1.</param>
public readonly record struct SensitivityIndex(double FirstOrder, double Total);

/// <summary>Variance-based sensitivity of several results to groups of inputs, by sampling.</summary>
/// <remarks>
/// Two independent designs A and B; in AB_i the columns of group i are those of B, the others those of A. First order 1 − E[(f(B) −
/// f(AB_i))²]/2V,
/// total E[(f(A) − f(AB_i))²]/2V (M. J. W. Jansen 1999; A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259; from memory) [Saltelli].
/// Checked on the Ishigami function, on Sobol's g-function and on a linear one, whose indices are known exactly.
/// </remarks>
public static class SensitivityIndices
{
    /// <summary>Runs both designs on all cores.</summary>
    /// <param name="dimensions">Inputs, each handed to the model as a number between 0 and 1.</param>
    /// <param name="groupOf">Group of each input, from 0.</param>
    /// <param name="results">Results that the model fills.</param>
    /// <param name="points">Points of each design; a power of two is best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="makeModel">Makes one model per worker: fills the results (second) from the inputs (first); NaN marks a result that does
    /// not exist there.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Indices by result and group; zero where a result does not vary.</returns>
    public static SensitivityIndex[][] Estimate(
        int dimensions,
        IReadOnlyList<int> groupOf,
        int results,
        int points,
        int seed,
        Func<Action<double[], double[]>> makeModel,
        CancellationToken cancel = default
    )
    {
        SobolSequence sequence = new(2 * dimensions, seed);
        int groups = groupOf.Count == 0 ? 0 : groupOf.Max() + 1;
        double[][] a = Run((k, d) => sequence.At(k, d)),
            b = Run((k, d) => sequence.At(k, d + dimensions));
        double[] variance = [.. Enumerable.Range(0, results).Select(r => Variance(a, b, r))];
        SensitivityIndex[][] indices = [.. Enumerable.Range(0, results).Select(_ => new SensitivityIndex[groups])];
        for (int g = 0; g < groups; g++)
        {
            int group = g;
            double[][] mixed = Run((k, d) => sequence.At(k, groupOf[d] == group ? d + dimensions : d));
            for (int r = 0; r < results; r++)
            {
                indices[r][g] =
                    variance[r] > 0
                        ? new SensitivityIndex(
                            Part(1 - HalfMeanSquare(b, mixed, r) / variance[r]),
                            Part(HalfMeanSquare(a, mixed, r) / variance[r])
                        )
                        : default;
            }
        }

        return indices;

        double[][] Run(Func<int, int, double> coordinate) => SampledRuns.Run(points, dimensions, results, coordinate, makeModel, cancel);
    }

    private static double Part(double share) => Math.Clamp(share, 0, 1);

    private static double HalfMeanSquare(double[][] first, double[][] second, int result)
    {
        double sum = 0;
        int count = 0;
        for (int k = 0; k < first.Length; k++)
        {
            double difference = first[k][result] - second[k][result];
            if (double.IsFinite(difference))
            {
                sum += difference * difference;
                count++;
            }
        }

        return count > 0 ? sum / (2 * count) : 0;
    }

    private static double Variance(double[][] first, double[][] second, int result)
    {
        double[] finite = [.. first.Concat(second).Select(outcome => outcome[result]).Where(double.IsFinite)];
        if (finite.Length < 2)
        {
            return 0;
        }

        double mean = finite.Average(),
            sum = finite.Sum(value => (value - mean) * (value - mean));
        double variance = sum / (finite.Length - 1);
        return variance > 1e-24 * mean * mean ? variance : 0;
    }
}
