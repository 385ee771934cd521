using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Pairing;

namespace Coilwright.Benchmarks;

/// <summary>
/// The best pairing of 1,000 and 1,000 coils, against the textbook's row-by-row method on the same table in the same run.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(launchCount: 1, warmupCount: 2, iterationCount: 8)]
public class PairingBenchmarks
{
    private const int Coils = 1000;
    private PairingCoil[] coils = [];
    private double[,] table = new double[0, 0];

    /// <summary>
    /// How far the second family lies above the first, %: 0 is the easy table, 4 the one where every coil wants the same partner.
    /// </summary>
    [Params(0, 4)]
    public int ApartPercent { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        double Ohm(double middle) => middle + 50 * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5);
        coils =
        [
            .. Enumerable
                .Range(0, 2 * Coils)
                .Select(at => new PairingCoil(
                    $"C-{at}",
                    at < Coils ? "slug" : "screw",
                    [Ohm(at < Coils ? 4000 : 4000 * (1 + 0.01 * ApartPercent))]
                )),
        ];
        table = new double[Coils, Coils];
        for (int row = 0; row < Coils; row++)
        {
            for (int column = 0; column < Coils; column++)
            {
                table[row, column] = new PairingPreference().Difference(coils[row].Values[0], coils[Coils + column].Values[0]);
            }
        }
    }

    [Benchmark(Baseline = true)]
    public double Textbook() => RowByRow(table);

    [Benchmark]
    public double BestPairing() => CoilPairing.Best(coils, [new PairingPreference()]).Total;

    /// <summary>The Hungarian method with potentials, one row at a time from nothing, as it stands in textbooks.</summary>
    private static double RowByRow(double[,] costs)
    {
        int count = costs.GetLength(0);
        double[] rowPrice = new double[count + 1],
            columnPrice = new double[count + 1];
        int[] rowOf = new int[count + 1],
            way = new int[count + 1];
        for (int row = 1; row <= count; row++)
        {
            rowOf[0] = row;
            int at = 0;
            double[] least = [.. Enumerable.Repeat(double.PositiveInfinity, count + 1)];
            bool[] used = new bool[count + 1];
            do
            {
                used[at] = true;
                int from = rowOf[at],
                    next = 0;
                double step = double.PositiveInfinity;
                for (int column = 1; column <= count; column++)
                {
                    if (used[column])
                    {
                        continue;
                    }

                    double reduced = costs[from - 1, column - 1] - rowPrice[from] - columnPrice[column];
                    if (reduced < least[column])
                    {
                        (least[column], way[column]) = (reduced, at);
                    }

                    if (least[column] < step)
                    {
                        (step, next) = (least[column], column);
                    }
                }

                for (int column = 0; column <= count; column++)
                {
                    if (used[column])
                    {
                        rowPrice[rowOf[column]] += step;
                        columnPrice[column] -= step;
                    }
                    else
                    {
                        least[column] -= step;
                    }
                }

                at = next;
            } while (rowOf[at] != 0);
            for (; at != 0; at = way[at])
            {
                rowOf[at] = rowOf[way[at]];
            }
        }

        return -columnPrice[0];
    }
}
