namespace Coilwright.Analysis.Uncertainty;

/// <summary>Runs a model at many points on all cores; the outcome does not depend on how many there are.</summary>
internal static class SampledRuns
{
    private const int Chunk = 256;

    public static double[][] Run(
        int points,
        int dimensions,
        int results,
        Func<int, int, double> coordinate,
        Func<Action<double[], double[]>> makeModel,
        CancellationToken cancel
    )
    {
        double[][] outcomes = new double[points][];
        int chunks = (points + Chunk - 1) / Chunk;
        Parallel.For(
            0,
            chunks,
            new ParallelOptions { CancellationToken = cancel },
            () => (Model: makeModel(), At: new double[dimensions]),
            (chunk, _, local) =>
            {
                for (int k = chunk * Chunk; k < Math.Min(points, (chunk + 1) * Chunk); k++)
                {
                    for (int d = 0; d < dimensions; d++)
                    {
                        local.At[d] = coordinate(k, d);
                    }

                    double[] outcome = new double[results];
                    local.Model(local.At, outcome);
                    outcomes[k] = outcome;
                }

                return local;
            },
            _ => { }
        );
        return outcomes;
    }
}
