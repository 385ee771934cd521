namespace Coilwright.Analysis.Diagnosis;

/// <summary>Which reading would tell most about the cause.</summary>
/// <remarks>
/// Mutual information between the cause and the reading: entropy of the cause now, less what is expected to remain. The reading's distribution under each cause
/// is a histogram with bins as wide as the reading's own deviation (Lindley 1956, from memory).
/// </remarks>
internal static class NextReadings
{
    private const double LeastBits = 0.02;

    public static IReadOnlyList<NextReading> Of(CoilEvidence evidence, Tally tally)
    {
        (string Cause, double Weight, CauseTable.Term Term, double Offset)[] shares = [.. tally.Shares()];
        List<NextReading> found = [Ask("dcResistance", shares, one => new CauseTable.Spread(one.Term.Again.Mean + one.Offset, one.Term.Again.Deviation), 0.003)];
        if (evidence.InductanceRatio is null)
        {
            found.Add(Ask("inductance", shares, one => one.Term.Henry, evidence.InductanceOffset));
        }

        if (evidence.QualityRatio is null)
        {
            found.Add(Ask("q", shares, one => one.Term.Quality, evidence.QualityOffset));
        }

        found.Add(Ask("turns", shares, one => new CauseTable.Spread(one.Term.TrueTurns, 0.0005), 0.002));
        found.Add(Ask("wireResistance", shares, one => one.Term.Wire, 0.003));
        return [.. found.Where(one => one.Information >= LeastBits).OrderByDescending(one => one.Information)];
    }

    private static NextReading Ask(string quantity, (string Cause, double Weight, CauseTable.Term Term, double Offset)[] shares, Func<(string Cause, double Weight, CauseTable.Term Term, double Offset), CauseTable.Spread> reading, double deviation)
    {
        double bin = Math.Max(deviation, 0.002);
        Dictionary<(string, int), double> joint = [];
        Dictionary<int, double> whole = [];
        Dictionary<string, double> causes = [];
        foreach ((string, double, CauseTable.Term, double) one in shares)
        {
            CauseTable.Spread spread = reading(one);
            double wide = Math.Sqrt(spread.Deviation * spread.Deviation + deviation * deviation);
            causes[one.Item1] = causes.GetValueOrDefault(one.Item1) + one.Item2;
            for (int n = -7; n <= 7; n++)
            {
                int place = (int)Math.Round((spread.Mean + n * wide / 2.5) / bin);
                double weight = one.Item2 * s_bell[n + 7];
                joint[(one.Item1, place)] = joint.GetValueOrDefault((one.Item1, place)) + weight;
                whole[place] = whole.GetValueOrDefault(place) + weight;
            }
        }

        double bits = joint.Sum(cell => cell.Value > 0 ? cell.Value * Math.Log2(cell.Value / (causes[cell.Key.Item1] * whole[cell.Key.Item2])) : 0);
        return new NextReading(quantity, Math.Max(0, bits));
    }

    private static readonly double[] s_bell = Bell();

    private static double[] Bell()
    {
        double[] weights = [.. Enumerable.Range(-7, 15).Select(n => Math.Exp(-0.5 * n * n / 6.25))];
        double sum = weights.Sum();
        return [.. weights.Select(weight => weight / sum)];
    }
}
