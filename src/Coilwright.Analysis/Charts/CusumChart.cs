namespace Coilwright.Analysis.Charts;

/// <summary>Two one-sided cumulative sums of what each value exceeds the centre by, less an allowance.</summary>
/// <param name="Centre">Target or mean.</param>
/// <param name="Sigma">Standard deviation of the values.</param>
/// <param name="Allowance">k in sigma: half the shift that is to be found.</param>
/// <param name="Decision">h in sigma: where a sum signals.</param>
/// <remarks>Page 1954, in the tabular form of any textbook (from memory). Run lengths: see <see cref="CusumRunLength"/>.</remarks>
public sealed record CusumChart(double Centre, double Sigma, double Allowance = 0.5, double Decision = 5)
{
    /// <summary>Upper and lower sum at each value, in sigma, both 0 or more.</summary>
    public IReadOnlyList<(double Upper, double Lower)> Sums(IReadOnlyList<double> values)
    {
        (double Upper, double Lower)[] sums = new (double, double)[values.Count];
        double upper = 0,
            lower = 0;
        for (int n = 0; n < sums.Length; n++)
        {
            double off = Sigma > 0 ? (values[n] - Centre) / Sigma : 0;
            upper = Math.Max(0, upper + off - Allowance);
            lower = Math.Max(0, lower - off - Allowance);
            sums[n] = (upper, lower);
        }

        return sums;
    }

    /// <summary>Places where a sum lies above the decision line.</summary>
    public IReadOnlyList<RunSignal> Signals(IReadOnlyList<double> values) =>
        [
            .. Sums(values)
                .Select((sum, n) => (sum, n))
                .Where(one => Math.Max(one.sum.Upper, one.sum.Lower) > Decision)
                .Select(one => new RunSignal(
                    one.n,
                    one.sum.Upper > Decision ? "cumulative sum: the run has moved up" : "cumulative sum: the run has moved down"
                )),
        ];
}
