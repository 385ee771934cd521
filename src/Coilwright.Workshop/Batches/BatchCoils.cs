using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>The coils of a batch that have a reading in force, in order of first entry, each with where it came from.</summary>
internal sealed class BatchCoils
{
    private readonly List<(CoilOrigin Origin, IReadOnlyList<ReadingRecord> InForce, IReadOnlyList<ReadingRecord> Superseded)> _coils;
    private readonly (string Spool, IReadOnlyList<ReadingRecord> InForce)[] _evidence;
    private readonly CoilOrigins _origins;

    /// <summary>Reads the records.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="readings">All of its readings in order of entry.</param>
    /// <param name="events">All of its events in order of entry.</param>
    public BatchCoils(BatchRecord batch, IReadOnlyList<ReadingRecord> readings, IReadOnlyList<BatchEventRecord> events)
    {
        HashSet<Guid> inForce = [.. ReadingChain.InForce(readings).Select(reading => reading.Id)];
        IReadOnlyDictionary<Guid, string> tags = ReadingChain.TagsNow(readings);
        ILookup<string, ReadingRecord> byTag = readings.ToLookup(reading => tags[reading.Id], StringComparer.Ordinal);
        _origins = new CoilOrigins(batch, events, readings);
        _coils =
        [
            .. _origins.Tags.Select(tag =>
                (
                    _origins.Of(tag),
                    (IReadOnlyList<ReadingRecord>)[.. byTag[tag].Where(reading => inForce.Contains(reading.Id))],
                    (IReadOnlyList<ReadingRecord>)[.. byTag[tag].Where(reading => !inForce.Contains(reading.Id) && !reading.Withdraws)]
                )
            ),
        ];
        _evidence = [.. _coils.Select(coil => (coil.Origin.Spool, coil.InForce))];
    }

    /// <summary>What the next entries may have to be asked.</summary>
    public IReadOnlyList<SpoolQuestion> Questions => _origins.Questions();

    /// <summary>Every coil with its verdict, judged together.</summary>
    public IReadOnlyList<CoilStatus> Judge(VerdictLimits limits)
    {
        IReadOnlyList<Verdict> verdicts = BatchJudgement.Judge(limits, _evidence);
        return [.. _coils.Select((coil, place) => Status(place, verdicts[place]))];
    }

    /// <summary>Every coil's verdict without its causes, by tag: what a chart needs, and sooner.</summary>
    public IReadOnlyDictionary<string, Verdict> Weigh(VerdictLimits limits)
    {
        IReadOnlyList<Verdict> verdicts = BatchJudgement.Weigh(limits, [.. _coils.Select(coil => coil.InForce)]);
        return _coils.Zip(verdicts).ToDictionary(pair => pair.First.Origin.Tag, pair => pair.Second, StringComparer.Ordinal);
    }

    /// <summary>One coil with its verdict in the light of the others; null when it has no reading in force.</summary>
    public CoilStatus? JudgeOne(VerdictLimits limits, string tag)
    {
        int place = _coils.FindIndex(coil => coil.Origin.Tag == tag);
        return place < 0 ? null : Status(place, BatchJudgement.JudgeOne(limits, _evidence, place));
    }

    /// <summary>What is off for the whole batch, in words.</summary>
    public IReadOnlyList<string> Remarks(VerdictLimits limits) => BatchJudgement.Remarks(limits, _evidence);

    /// <summary>Signals of the run's chart that one coil completes.</summary>
    public IReadOnlyList<string> SignalsAt(VerdictLimits limits, string tag) =>
        [
            .. BatchChart
                .Signals(_coils.Zip(BatchJudgement.WithoutCauses(limits, _evidence), (coil, verdict) => (coil.Origin.Tag, verdict)))
                .Where(signal => signal.Tag == tag)
                .Select(signal => signal.Rule),
        ];

    private CoilStatus Status(int place, Verdict verdict)
    {
        (CoilOrigin origin, IReadOnlyList<ReadingRecord> inForce, IReadOnlyList<ReadingRecord> superseded) = _coils[place];
        return new CoilStatus(origin.Tag, inForce, superseded, verdict, inForce.Max(reading => reading.TimeUtc)) { Origin = origin };
    }
}
