using System.Buffers;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Which reading would tell most about the cause.</summary>
/// <remarks>
/// Mutual information between the cause and the reading: entropy of the cause now, less what is expected to remain. The reading's
/// distribution under each cause
/// is a histogram with bins as wide as the reading's own deviation (Lindley 1956, from memory).
/// </remarks>
internal static class NextReadings
{
    private const double LeastBits = 0.05;

    private static double Entropy((string Cause, double Weight, CauseTerm Term, double Offset)[] shares) =>
        shares
            .GroupBy(one => one.Cause, StringComparer.Ordinal)
            .Select(cause => cause.Sum(one => one.Weight))
            .Sum(weight => weight > 0 ? -weight * Math.Log2(weight) : 0);

    public static IReadOnlyList<NextReading> Compute(CoilEvidence evidence, WeightedCounts tally)
    {
        (string Cause, double Weight, CauseTerm Term, double Offset)[] shares = [.. tally.Shares()];
        if (Entropy(shares) < LeastBits)
        {
            return []; // no reading can tell more than there is to know
        }

        List<NextReading> found =
        [
            Ask(
                QuantityKey.DcResistance,
                shares,
                one => new LogSpread((one.Term.Again ?? one.Term.Ohm).Mean + one.Offset, (one.Term.Again ?? one.Term.Ohm).Deviation),
                0.003
            ),
        ];
        if (evidence.InductanceRatio is null)
        {
            found.Add(Ask("inductance", shares, one => one.Term.Henry, evidence.InductanceOffset));
        }

        if (evidence.QualityRatio is null)
        {
            found.Add(Ask("q", shares, one => one.Term.Quality, evidence.QualityOffset));
        }

        found.Add(Ask("turns", shares, one => new LogSpread(one.Term.TrueTurns, 0.0005), 0.002));
        found.Add(Ask(QuantityKey.WireResistance, shares, one => one.Term.Wire, 0.003));
        return [.. found.Where(one => one.Information >= LeastBits).OrderByDescending(one => one.Information)];
    }

    private static NextReading Ask(
        string quantity,
        (string Cause, double Weight, CauseTerm Term, double Offset)[] shares,
        Func<(string Cause, double Weight, CauseTerm Term, double Offset), LogSpread> reading,
        double deviation
    )
    {
        double bin = Math.Max(deviation, 0.002);
        (int Cause, double Weight, double Mean, double Wide)[] spread = new (int, double, double, double)[shares.Length];
        Dictionary<string, int> number = new(StringComparer.Ordinal);
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (int n = 0; n < shares.Length; n++)
        {
            LogSpread one = reading(shares[n]);
            double wide = Math.Sqrt(one.Deviation * one.Deviation + deviation * deviation) / 2.5;
            _ = number.TryAdd(shares[n].Cause, number.Count);
            spread[n] = (number[shares[n].Cause], shares[n].Weight, one.Mean, wide);
            (low, high) = (Math.Min(low, one.Mean - Reach * wide), Math.Max(high, one.Mean + Reach * wide));
        }

        return new NextReading(
            quantity,
            shares.Length == 0
                ? 0
                : Math.Max(0, Bits(spread, number.Count, bin, (int)Math.Floor(low / bin) - 1, (int)Math.Ceiling(high / bin) + 1))
        );
    }

    /// <summary>Mutual information, bits, of cause and reading; the reading falls into bins between two numbers.</summary>
    private static double Bits((int Cause, double Weight, double Mean, double Wide)[] spread, int causes, double bin, int first, int last)
    {
        int[] rowOf = ArrayPool<int>.Shared.Rent(last - first + 1); // most bins stay empty, so only those that are met get a row
        Array.Clear(rowOf, 0, last - first + 1);
        double[] joint = ArrayPool<double>.Shared.Rent(causes * spread.Length * (2 * Reach + 1)),
            ofCause = new double[causes];
        int rows = 0;
        foreach ((int cause, double weight, double mean, double wide) in spread)
        {
            ofCause[cause] += weight;
            for (int n = -Reach; n <= Reach; n++)
            {
                ref int row = ref rowOf[(int)Math.Round((mean + n * wide) / bin) - first];
                if (row == 0)
                {
                    row = ++rows;
                    Array.Clear(joint, (row - 1) * causes, causes);
                }

                joint[(row - 1) * causes + cause] += weight * s_bell[n + Reach];
            }
        }

        double bits = 0;
        for (int row = 0; row < rows; row++)
        {
            ReadOnlySpan<double> cell = joint.AsSpan(row * causes, causes);
            double whole = 0;
            foreach (double part in cell)
            {
                whole += part;
            }

            for (int cause = 0; cause < causes; cause++)
            {
                bits += cell[cause] > 0 ? cell[cause] * Math.Log2(cell[cause] / (ofCause[cause] * whole)) : 0;
            }
        }

        ArrayPool<int>.Shared.Return(rowOf);
        ArrayPool<double>.Shared.Return(joint);
        return bits;
    }

    /// <summary>Points to each side of a mean, two and a half to a deviation.</summary>
    private const int Reach = 7;

    private static readonly double[] s_bell = Bell();

    private static double[] Bell()
    {
        double[] weights = [.. Enumerable.Range(-Reach, 2 * Reach + 1).Select(n => Math.Exp(-0.5 * n * n / 6.25))];
        double sum = weights.Sum();
        return [.. weights.Select(weight => weight / sum)];
    }
}
