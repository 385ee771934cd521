using Coilwright.Analysis.Learning;

namespace Coilwright.Workshop.Learning;

/// <summary>Everything on record of what the shop learnt: which set holds when, and which lines ended when.</summary>
public sealed class LearningBook
{
    private readonly IReadOnlyList<LearningRecord> _records;
    private readonly Dictionary<int, LearntSet> _sets = [];

    /// <summary>Reads the records, in order of entry.</summary>
    public LearningBook(IReadOnlyList<LearningRecord> records) => _records = records;

    /// <summary>Sets as proposed, in order.</summary>
    public IEnumerable<LearningRecord> Proposals => _records.Where(record => record.Act == LearningAct.Proposed);

    /// <summary>Lines that ended, in order.</summary>
    public IEnumerable<LearningRecord> Endings => _records.Where(record => record.Act == LearningAct.Closed);

    /// <summary>What was decided of a set; null while nothing was.</summary>
    public LearningRecord? DecisionOf(int number) =>
        _records.FirstOrDefault(record => record.Number == number && (record.Act is LearningAct.Accepted or LearningAct.Declined));

    /// <summary>The set that waits for a decision: the newest proposal, unless it was decided.</summary>
    public LearningRecord? Waiting => Proposals.LastOrDefault() is { } last && DecisionOf(last.Number) is null ? last : null;

    /// <summary>The set that holds at a moment; null before the first was accepted.</summary>
    public LearntSet? At(DateTimeOffset timeUtc) =>
        _records.LastOrDefault(record => record.Act == LearningAct.Accepted && record.TimeUtc <= timeUtc) is { } accepted
            ? Numbered(accepted.Number)
            : null;

    /// <summary>An accepted set by its number; null for 0, and for one that was not accepted.</summary>
    public LearntSet? Numbered(int number)
    {
        if (_sets.TryGetValue(number, out LearntSet? known))
        {
            return known;
        }

        LearningRecord? accepted = _records.FirstOrDefault(record => record.Act == LearningAct.Accepted && record.Number == number),
            proposed = Proposals.FirstOrDefault(record => record.Number == number);
        return accepted is null || proposed is null ? null : _sets[number] = LearntSet.Read(proposed, accepted.TimeUtc);
    }

    /// <summary>How often a line was ended until a moment.</summary>
    public int EndingsOf(EffectKind kind, string name, DateTimeOffset timeUtc) =>
        Endings.Count(record => record.TimeUtc <= timeUtc && record.Line == KeyOf(kind, name));

    /// <summary>What forecasts of a coil take in that is wound at a moment; null before the first set was accepted.</summary>
    /// <param name="timeUtc">When.</param>
    /// <param name="spool">Its spool and lot; empty when nobody named one.</param>
    public RecipeLearning? For(DateTimeOffset timeUtc, (string Label, string Lot) spool) =>
        At(timeUtc) is { } set ? new RecipeLearning(set, this, timeUtc, spool) : null;

    /// <summary>What the forecasts of a batch took in that was begun under a set; null for 0.</summary>
    /// <param name="number">Number of the set.</param>
    /// <param name="timeUtc">When the batch began.</param>
    /// <param name="spool">Its spool and lot.</param>
    public RecipeLearning? Under(int number, DateTimeOffset timeUtc, (string Label, string Lot) spool) =>
        Numbered(number) is { } set ? new RecipeLearning(set, this, timeUtc, spool) : null;

    /// <summary>The key of a line, whichever of its endings.</summary>
    public static string KeyOf(EffectKind kind, string name) => $"{kind}:{name}";
}
