namespace Coilwright.Analysis.Diagnosis;

/// <summary>Adds up the weights of causes and of their sizes.</summary>
internal sealed class WeightedCounts
{
    private const double Negligible = 1e-4;

    /// <summary>A cause is named alone when it is more likely than the next by this factor. Our assumption.</summary>
    private const double Apart = 3;

    private readonly Dictionary<(string Cause, bool OfBatch), (double Weight, double Size, double Offset)> _sums = [];

    /// <summary>Every weighed size with its weight and the offset of its spool.</summary>
    public List<(string Cause, double Weight, CauseTerm Term, double Offset)> All { get; } = [];

    public void Add(string cause, double weight, CauseTerm term, double offset, double shift, bool ofBatch = false)
    {
        if (!(weight > 0))
        {
            return;
        }

        (double sum, double size, double shifts) = _sums.GetValueOrDefault((cause, ofBatch));
        _sums[(cause, ofBatch)] = (sum + weight, size + weight * term.Size, shifts + weight * shift);
        All.Add((cause, weight, term, offset));
    }

    /// <summary>The causes worth telling, most probable first.</summary>
    /// <param name="evidence">The coil's readings.</param>
    /// <param name="disagree">Whether more than one of them is off.</param>
    public IReadOnlyList<ProbableCause> Causes(CoilEvidence evidence, bool disagree)
    {
        double total = _sums.Values.Sum(one => one.Weight);
        if (!(total > 0))
        {
            return [new ProbableCause("meter-error", 1, CauseFormatter.Disagree)];
        }

        return
        [
            .. _sums
                .GroupBy(one => one.Key.Cause)
                .Select(same => Cause([.. same.Select(one => (one.Value, one.Key.OfBatch))], same.Key, total, evidence, disagree))
                .Where(cause => cause.Probability >= CauseFinder.LeastTold)
                .OrderByDescending(cause => cause.Probability),
        ];
    }

    /// <summary>The likeliest fault of the coil itself with those that the readings cannot tell from it.</summary>
    public static IReadOnlyList<string> Group(IReadOnlyList<ProbableCause> causes)
    {
        ProbableCause[] faults = [.. causes.Where(cause => cause.Name != "none" && !cause.OfBatch)];
        return faults.Length == 0
            ? []
            : [.. faults.Where(cause => Apart * cause.Probability > faults[0].Probability).Select(cause => cause.Name)];
    }

    /// <summary>The weighed sizes that matter, with weights that sum to one.</summary>
    public IEnumerable<(string Cause, double Weight, CauseTerm Term, double Offset)> Shares()
    {
        double total = All.Sum(one => one.Weight);
        return All.Where(one => one.Weight > Negligible * total).Select(one => (one.Cause, one.Weight / total, one.Term, one.Offset));
    }

    private static ProbableCause Cause(
        ((double Weight, double Size, double Offset) Sum, bool OfBatch)[] parts,
        string key,
        double total,
        CoilEvidence evidence,
        bool disagree
    )
    {
        double weight = parts.Sum(part => part.Sum.Weight),
            size = parts.Sum(part => part.Sum.Size) / weight,
            offset = parts.Sum(part => part.Sum.Offset) / weight;
        string detail = key == "meter-error" && disagree ? CauseFormatter.Disagree : CauseTable.Find(key)!.Detail(size, offset, evidence);
        return new ProbableCause(key, weight / total, detail)
        {
            OfBatch = parts.Where(part => part.OfBatch).Sum(part => part.Sum.Weight) > weight / 2,
        };
    }
}
