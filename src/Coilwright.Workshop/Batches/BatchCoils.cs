using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>The coils of a batch that have a reading in force, in order of first entry, each with the spool it was wound from.</summary>
internal sealed class BatchCoils
{
    private readonly List<(string Tag, IReadOnlyList<ReadingRecord> InForce, IReadOnlyList<ReadingRecord> Superseded)> _coils;
    private readonly (string Spool, IReadOnlyList<ReadingRecord> InForce)[] _evidence;

    /// <summary>Reads the records.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="readings">All of its readings in order of entry.</param>
    /// <param name="events">All of its events in order of entry.</param>
    public BatchCoils(BatchRecord batch, IReadOnlyList<ReadingRecord> readings, IReadOnlyList<BatchEventRecord> events)
    {
        HashSet<Guid> inForce = [.. ReadingChain.InForce(readings).Select(reading => reading.Id)];
        _coils =
        [
            .. readings.GroupBy(reading => reading.Tag, StringComparer.Ordinal).Where(coil => coil.Any(reading => inForce.Contains(reading.Id))).Select(coil =>
                (coil.Key, (IReadOnlyList<ReadingRecord>)[.. coil.Where(reading => inForce.Contains(reading.Id))], (IReadOnlyList<ReadingRecord>)[.. coil.Where(reading => !inForce.Contains(reading.Id) && !reading.Withdraws)])),
        ];
        IReadOnlyList<BatchEventRecord> held = new BatchHistory(batch, events, new Dictionary<string, DateTimeOffset>()).InForce;
        _evidence = [.. _coils.Select(coil => (BatchHistory.SpoolAt(batch, held, coil.InForce.Concat(coil.Superseded).Min(reading => reading.TimeUtc)), coil.InForce))];
    }

    /// <summary>Every coil with its verdict, judged together.</summary>
    public IReadOnlyList<CoilStanding> Judge(VerdictLimits limits)
    {
        IReadOnlyList<Verdict> verdicts = BatchJudgement.Judge(limits, _evidence);
        return [.. _coils.Select((coil, place) => Standing(place, verdicts[place]))];
    }

    /// <summary>One coil with its verdict in the light of the others; null when it has no reading in force.</summary>
    public CoilStanding? JudgeOne(VerdictLimits limits, string tag)
    {
        int place = _coils.FindIndex(coil => coil.Tag == tag);
        return place < 0 ? null : Standing(place, BatchJudgement.JudgeOne(limits, _evidence, place));
    }

    /// <summary>What is off for the whole batch, in words.</summary>
    public IReadOnlyList<string> Remarks(VerdictLimits limits) => BatchJudgement.Remarks(limits, _evidence);

    /// <summary>Signals of the run's chart that one coil completes.</summary>
    public IReadOnlyList<string> SignalsAt(VerdictLimits limits, string tag) =>
        [.. BatchChart.Signals(_coils.Zip(BatchJudgement.WithoutCauses(limits, _evidence), (coil, verdict) => (coil.Tag, verdict))).Where(signal => signal.Tag == tag).Select(signal => signal.Rule)];

    private CoilStanding Standing(int place, Verdict verdict) =>
        new(_coils[place].Tag, _coils[place].InForce, _coils[place].Superseded, verdict, _coils[place].InForce.Max(reading => reading.TimeUtc));
}
