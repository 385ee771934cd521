namespace Coilwright.Analysis.Diagnosis;

/// <summary>Adds up the weights of causes and of their sizes.</summary>
internal sealed class WeightedCounts
{
    private const double Negligible = 1e-4;
    private readonly Dictionary<string, (double Weight, double Size, double Offset)> _sums = new(StringComparer.Ordinal);

    /// <summary>Every weighed size with its weight and the offset of its spool.</summary>
    public List<(string Cause, double Weight, CauseTable.Term Term, double Offset)> All { get; } = [];

    public void Add(string cause, double weight, CauseTable.Term term, double offset, double shift)
    {
        if (!(weight > 0))
        {
            return;
        }

        (double sum, double size, double shifts) = _sums.GetValueOrDefault(cause);
        _sums[cause] = (sum + weight, size + weight * term.Size, shifts + weight * shift);
        All.Add((cause, weight, term, offset));
    }

    /// <summary>The causes worth telling, most probable first.</summary>
    /// <param name="evidence">The coil's readings.</param>
    /// <param name="disagree">Whether more than one of them is off.</param>
    public IReadOnlyList<ProbableCause> Causes(CoilEvidence evidence, bool disagree)
    {
        double total = _sums.Values.Sum(one => one.Weight);
        return total > 0
            ?
            [
                .. _sums
                    .Where(one => one.Value.Weight >= CauseFinder.LeastTold * total)
                    .OrderByDescending(one => one.Value.Weight)
                    .Select(one => new ProbableCause(
                        one.Key,
                        one.Value.Weight / total,
                        CauseFormatter.Detail(
                            one.Key,
                            one.Value.Size / one.Value.Weight,
                            one.Value.Offset / one.Value.Weight,
                            evidence,
                            disagree
                        )
                    )),
            ]
            : [new ProbableCause("meter-error", 1, CauseFormatter.Disagree)];
    }

    /// <summary>The weighed sizes that matter, with weights that sum to one.</summary>
    public IEnumerable<(string Cause, double Weight, CauseTable.Term Term, double Offset)> Shares()
    {
        double total = All.Sum(one => one.Weight);
        return All.Where(one => one.Weight > Negligible * total).Select(one => (one.Cause, one.Weight / total, one.Term, one.Offset));
    }
}
