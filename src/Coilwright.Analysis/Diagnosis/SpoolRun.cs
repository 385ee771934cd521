namespace Coilwright.Analysis.Diagnosis;

/// <summary>
/// The coils of one spool in the order they were wound: one offset of their ohms for all, or another one from some coil on, where nobody
/// noted that the spool was changed.
/// </summary>
/// <remarks>
/// Each place of a change is a model of its own, weighed by its evidence: two offsets, each integrated over the grid under the prior of a
/// spool (any textbook of change points, from memory).
/// </remarks>
internal sealed class SpoolRun
{
    /// <summary>Prior probability that the spool was changed unnoticed within one batch. Our assumption, no source.</summary>
    private const double Changed = 0.02;

    /// <summary>Fewer coils than this to either side are coils with a fault of their own.</summary>
    private const int LeastSide = 2;

    private readonly double[] _prior;
    private readonly double[][] _logs;

    /// <summary>Log likelihoods of all coils before a place, summed, at each offset.</summary>
    private readonly double[][] _before;
    private readonly int[] _changes;
    private readonly double?[] _means;

    /// <summary>Weighs every place of a change.</summary>
    /// <param name="logs">Log likelihood of each coil at each offset of the grid, in order.</param>
    /// <param name="evidence">Whose spool it is.</param>
    public SpoolRun(double[][] logs, CoilEvidence evidence)
    {
        _logs = logs;
        _prior = [.. SpoolPrior.All(evidence).Select(weights => weights.Sum())];
        _before = new double[logs.Length + 1][];
        _before[0] = new double[SpoolPrior.Grid.Length];
        for (int n = 0; n < logs.Length; n++)
        {
            _before[n + 1] = [.. _before[n].Zip(logs[n], (sum, one) => sum + one)];
        }

        int places = Math.Max(0, logs.Length - 2 * LeastSide + 1);
        _changes = [logs.Length, .. Enumerable.Range(LeastSide, places)]; // the first stands for no change
        _means = new double?[_changes.Length];
        double[] weights =
        [
            .. _changes.Select((at, n) => Math.Log(n == 0 ? 1 - Changed : Changed / places) + Evidence(0, at) + Evidence(at, logs.Length)),
        ];
        double largest = weights.Max(),
            all = weights.Sum(weight => Math.Exp(weight - largest));
        Weights = [.. weights.Select(weight => Math.Exp(weight - largest) / all)];
    }

    /// <summary>Posterior probability of no change, then of each place of one.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>The likeliest place of a change, the number of coils before it, and the probability of any change.</summary>
    public (int Place, double Probability) Change
    {
        get
        {
            int likeliest = Enumerable.Range(1, _changes.Length - 1).DefaultIfEmpty(0).MaxBy(n => Weights[n]);
            return (_changes[likeliest], 1 - Weights[0]);
        }
    }

    /// <summary>Mean and deviation of the offset of the coils from one place to before another.</summary>
    public (double Mean, double Deviation) Offset(int from, int to)
    {
        double[] light = Light(from, to, except: null);
        double sum = 0,
            moment = 0,
            square = 0;
        for (int g = 0; g < light.Length; g++)
        {
            double weight = light[g] * _prior[g],
                offset = SpoolPrior.Grid[g];
            (sum, moment, square) = (sum + weight, moment + weight * offset, square + weight * offset * offset);
        }

        double mean = moment / sum;
        return (mean, Math.Sqrt(Math.Max(0, square / sum - mean * mean)));
    }

    /// <summary>
    /// What the others say of one coil's offset, under each model that matters: its weight, the likelihood at each offset, and the mean
    /// offset of the coils before the change where this one comes after it.
    /// </summary>
    /// <param name="place">Place of the coil, or how many of these were wound before it.</param>
    /// <param name="isAmong">Whether it is one of these; it must not vouch for itself.</param>
    public IEnumerable<(double Weight, double[] Light, double? Before)> OthersOf(int place, bool isAmong)
    {
        const double Least = 1e-4;
        for (int n = 0; n < _changes.Length; n++)
        {
            int at = _changes[n];
            if (Weights[n] < Least)
            {
                continue;
            }

            bool later = n > 0 && place >= at;
            (int from, int to) = n == 0 || !later ? (0, at) : (at, _logs.Length);
            double[] light = Light(from, to, isAmong ? place : null);
            double whole = 0;
            for (int g = 0; g < light.Length; g++)
            {
                whole += _prior[g] * light[g] * (isAmong ? Math.Exp(_logs[place][g]) : 1);
            }

            // the model's weight holds this coil's own readings already: they are taken out here and come back with the causes
            yield return (Weights[n] / whole, light, later ? _means[n] ??= Offset(0, at).Mean : null);
        }
    }

    private double Evidence(int from, int to)
    {
        if (from == to)
        {
            return 0;
        }

        double largest = double.NegativeInfinity;
        double[] logs = new double[_prior.Length];
        for (int g = 0; g < logs.Length; g++)
        {
            logs[g] = _before[to][g] - _before[from][g];
            largest = Math.Max(largest, logs[g]);
        }

        double sum = 0,
            prior = 0;
        for (int g = 0; g < logs.Length; g++)
        {
            sum += _prior[g] * Math.Exp(logs[g] - largest);
            prior += _prior[g];
        }

        return largest + Math.Log(sum / prior);
    }

    /// <summary>Likelihood of some coils at each offset, up to a factor, one of them left out.</summary>
    private double[] Light(int from, int to, int? except)
    {
        double[] logs = [.. _before[to].Zip(_before[from], (high, low) => high - low)];
        if (except is { } self && self >= from && self < to)
        {
            logs = [.. logs.Zip(_logs[self], (sum, own) => sum - own)];
        }

        double largest = logs.Max();
        return [.. logs.Select(log => Math.Exp(log - largest))];
    }
}
