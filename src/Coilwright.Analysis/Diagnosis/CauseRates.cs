using System.Collections.Frozen;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>How often each fault happens in a shop: the table's starting rates, moved by what people found out in the end.</summary>
/// <remarks>
/// Faults share a Dirichlet distribution (the posterior of shares after counts; any textbook, from memory): each starts with as many cases
/// as its rate's share of <see cref="Worth"/>, and each confirmed case counts one more. How many coils have any fault stays as assumed, for
/// nobody confirms the good ones.
/// </remarks>
public sealed class CauseRates
{
    /// <summary>The starting rates are worth this many confirmed cases. Our assumption.</summary>
    private const double Worth = 40;

    private readonly FrozenDictionary<string, double> _factors;

    private CauseRates(IReadOnlyDictionary<string, int> confirmed)
    {
        CauseEntry[] faults = [.. CauseTable.All.Where(cause => cause.Rate > 0)];
        double all = faults.Sum(cause => cause.Rate),
            cases = faults.Sum(cause => (double)confirmed.GetValueOrDefault(cause.Key));
        double FactorOf(CauseEntry cause)
        {
            double share = cause.Rate / all;
            return (Worth * share + confirmed.GetValueOrDefault(cause.Key)) / (Worth + cases) / share;
        }

        Confirmed = (int)cases;
        _factors = faults.ToFrozenDictionary(cause => cause.Key, FactorOf, StringComparer.Ordinal);
    }

    /// <summary>The table's rates: nothing confirmed yet.</summary>
    public static CauseRates Starting { get; } = new(new Dictionary<string, int>());

    /// <summary>How many cases they rest on beside the starting rates.</summary>
    public int Confirmed { get; }

    /// <summary>Rates after confirmed cases.</summary>
    /// <param name="causes">The cause of each case, by its key; what is no fault of the table counts nothing.</param>
    public static CauseRates Learn(IEnumerable<string> causes) =>
        new(causes.CountBy(cause => cause, StringComparer.Ordinal).ToDictionary(one => one.Key, one => one.Value, StringComparer.Ordinal));

    /// <summary>What a cause's starting rate is multiplied by.</summary>
    internal double FactorOf(string cause) => _factors.GetValueOrDefault(cause, 1);
}
