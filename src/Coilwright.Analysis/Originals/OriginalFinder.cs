using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>Weighs every wire and every core against the readings of an original.</summary>
/// <remarks>
/// Bayes' rule over gauge × build × core material, integrated by seeded low-discrepancy importance sampling. Judged on simulated originals: how often the 95 %
/// intervals hold the turns, and how often what is given 80 % is true.
/// </remarks>
public static class OriginalFinder
{
    private const double LowestBuildM = 0.4e-3;
    private const double HighestBuildM = 9e-3;

    /// <summary>Weighs the evidence.</summary>
    public static OriginalAnswer Find(OriginalQuestion question, CancellationToken cancel = default)
    {
        double[] frequencies = [.. question.Readings.Where(reading => reading.Quantity == "inductance").Select(reading => reading.AtHz).Distinct().Order()];
        double highM = Math.Min(HighestBuildM, 1.15 * (question.Cores[0].Model.Coils[0].Bobbin.MaxBuildM ?? HighestBuildM));
        CoreTable[] tables = frequencies.Length == 0 ? [] : new CoreTable[question.Cores.Count];
        Parallel.For(0, tables.Length, new ParallelOptions { CancellationToken = cancel }, m => tables[m] = new CoreTable(question.Cores[m].Model, frequencies, LowestBuildM, highM, cancel));
        Posterior[] posteriors = new Posterior[question.Wires.Count];
        Func<double, double>? perTurn = tables.Length == 0 ? null : buildM => tables.Select((table, m) => table.PerTurn(0, buildM) * question.Cores[m].Prior).Sum() / question.Cores.Sum(core => core.Prior);
        Parallel.For(0, posteriors.Length, new ParallelOptions { CancellationToken = cancel }, w =>
            posteriors[w] = Weigh(question, w, new OriginalDraw(question.Cores[0].Model, question.Wires[w], question.Readings).Draw(question.Samples, question.Seed + 31 * w, perTurn), tables, frequencies));
        return new OriginalReport(question, posteriors, tables, frequencies).Answer();
    }

    /// <summary>Logarithm of the normal density of a reading about a value, without what is the same for all.</summary>
    internal static double LogNormalOf(OriginalReading reading, double value)
    {
        double off = (reading.Value - value) / (reading.Half / Estimate.Sigmas95);
        return -off * off / 2;
    }

    private static Posterior Weigh(OriginalQuestion question, int w, PossibleWinding[] drawn, CoreTable[] tables, double[] frequencies)
    {
        int cores = question.Cores.Count;
        double[,] log = new double[drawn.Length, cores];
        OriginalReading[] inductances = [.. question.Readings.Where(reading => reading.Quantity == "inductance")];
        int[] at = [.. inductances.Select(reading => Array.IndexOf(frequencies, reading.AtHz))];
        for (int k = 0; k < drawn.Length; k++)
        {
            PossibleWinding winding = drawn[k];
            for (int m = 0; m < cores; m++)
            {
                log[k, m] = winding.LogWeight + Math.Log(question.Cores[m].Prior) + Math.Log(question.Wires[w].Prior);
                if (tables.Length == 0 || !winding.IsPossible)
                {
                    continue;
                }

                double perTurn2 = winding.Turns * winding.Turns;
                double core = 1 + winding.CoreDeviations * tables[m].Spread(winding.BuildM) / Estimate.Sigmas95;
                for (int r = 0; r < inductances.Length; r++)
                {
                    log[k, m] += LogNormalOf(inductances[r], perTurn2 * core * tables[m].PerTurn(at[r], winding.BuildM));
                }
            }
        }

        return new Posterior(drawn, log);
    }
}

/// <summary>The draws of one wire, and the logarithm of the weight of each with each core.</summary>
internal sealed record Posterior(PossibleWinding[] Drawn, double[,] LogWeight)
{
    public double Largest => LogWeight.Cast<double>().Where(double.IsFinite).DefaultIfEmpty(double.NegativeInfinity).Max();
}
