using Coilwright.Analysis.Diagnosis;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>
/// A batch's records taken together: where each coil came from, who had it in hand, and its verdict. Made once for each state of the
/// records; a coil is judged when it is first asked for, and once.
/// </summary>
public sealed class BatchDossier
{
    private readonly Lock _judging = new();
    private readonly List<(CoilOrigin Origin, IReadOnlyList<ReadingRecord> InForce, IReadOnlyList<ReadingRecord> Superseded)> _coils;
    private readonly (string Spool, IReadOnlyList<ReadingRecord> InForce)[] _evidence;
    private readonly CoilOrigins _origins;
    private readonly CoilDossier?[] _judged;
    private IReadOnlyList<BatchRemark>? _remarks;
    private readonly VerdictLimits? _limits;
    private readonly UnreadableRecord? _fault;
    private readonly Lazy<IReadOnlyDictionary<string, Verdict>> _weighed;

    /// <summary>Reads the records.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="readings">All of its readings in order of entry.</param>
    /// <param name="events">All of its events in order of entry.</param>
    /// <param name="limits">What it is judged against, or why there is nothing to judge it by.</param>
    /// <param name="rates">How often each fault happens in the shop; the starting rates unless said.</param>
    internal BatchDossier(
        BatchRecord batch,
        IReadOnlyList<ReadingRecord> readings,
        IReadOnlyList<BatchEvent> events,
        RecordStatus<VerdictLimits> limits,
        CauseRates? rates = null
    )
    {
        Batch = batch;
        Readings = readings;
        Events = events;
        _limits = limits.Value;
        _fault = limits.Fault;
        HashSet<Guid> inForce = [.. ReadingChain.InForce(readings).Select(reading => reading.Id)];
        IReadOnlyDictionary<Guid, string> tags = ReadingChain.TagsNow(readings);
        ILookup<string, ReadingRecord> byTag = readings.ToLookup(reading => tags[reading.Id], StringComparer.Ordinal);
        History = new BatchEventLog(batch, events, new Dictionary<string, DateTimeOffset>());
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
        _judged = new CoilDossier?[_coils.Count];
        Rates = rates ?? CauseRates.Starting;
        _weighed = new(Weigh);
    }

    public BatchRecord Batch { get; }

    /// <summary>How often each fault happens in the shop, as its coils are judged by.</summary>
    public CauseRates Rates { get; }

    /// <summary>All readings in order of entry, those superseded and taken back too.</summary>
    public IReadOnlyList<ReadingRecord> Readings { get; }

    /// <summary>All events in order of entry, those taken back too.</summary>
    public IReadOnlyList<BatchEvent> Events { get; }

    /// <summary>The events as they hold, of whatever was read since.</summary>
    public BatchEventLog History { get; }

    /// <summary>Tags of the coils that have a reading in force, in order of first entry.</summary>
    public IReadOnlyList<string> Tags => _origins.Tags;

    /// <summary>Coils wanted: the batch's number and what was asked for since.</summary>
    public int Wanted => BatchNumber.Wanted(Batch, History.InForce);

    /// <summary>Where it stands.</summary>
    public BatchState State => BatchNumber.State(Tags.Count, Beyond.Count, Wanted, History.Closing);

    /// <summary>The tag proposed for the next coil; null when the batch is full or was closed.</summary>
    public string? NextTag =>
        State != BatchState.UnderWay
            ? null
            : BatchTags.Next(Batch, [.. ReadingChain.InForce(Readings).Select(reading => reading.Tag)], Wanted);

    /// <summary>Tags of coils beyond the number wanted.</summary>
    public IReadOnlySet<string> Beyond => BatchNumber.Beyond(Batch, Wanted, Tags);

    /// <summary>How far it is: "24 of 24 done".</summary>
    public string CountWords => BatchNumber.Words(Tags.Count, Beyond.Count, Wanted, History.Closing);

    /// <summary>What an undo would take back.</summary>
    public string UndoWords => new ReadingUndo(Readings).Words;

    /// <summary>What the next entries may have to be asked.</summary>
    public IReadOnlyList<SpoolQuestion> Questions => _origins.Questions();

    /// <summary>What the coils are judged against.</summary>
    /// <exception cref="UnreadableRecordException">There is nothing to judge them by.</exception>
    public VerdictLimits RequireLimits() => _limits ?? throw new UnreadableRecordException(_fault!.Why, _fault.ToDo);

    /// <summary>Why there is nothing to judge the coils by; null when there is.</summary>
    public UnreadableRecord? Fault => _fault;

    /// <summary>Every coil with its verdict, judged together, in order of first entry.</summary>
    /// <exception cref="UnreadableRecordException">There is nothing to judge them by.</exception>
    public IReadOnlyList<CoilDossier> Coils => Judge([.. Enumerable.Range(0, _coils.Count)]);

    /// <summary>What is off for the whole batch and is no coil's fault.</summary>
    /// <exception cref="UnreadableRecordException">There is nothing to judge it by.</exception>
    public IReadOnlyList<BatchRemark> Remarks
    {
        get
        {
            VerdictLimits limits = RequireLimits();
            lock (_judging)
            {
                return _remarks ??= BatchJudgement.JudgeSome(limits, _evidence, [], Rates).Remarks;
            }
        }
    }

    /// <summary>Every coil's verdict without its causes, by tag: what a chart needs, and sooner. Empty without limits.</summary>
    public IReadOnlyDictionary<string, Verdict> Weighed => _weighed.Value;

    /// <summary>One coil with its verdict in the light of the others; null when it has no reading in force.</summary>
    public CoilDossier? Coil(string tag)
    {
        int place = _coils.FindIndex(coil => coil.Origin.Tag == tag);
        return place < 0 ? null : Judge([place])[0];
    }

    /// <summary>Where a coil came from; a coil without a reading in force too.</summary>
    public CoilOrigin OriginOf(string tag) => _origins.Of(tag);

    /// <summary>Readings of a coil that hold; judges nothing.</summary>
    public IReadOnlyList<ReadingRecord> InForce(string tag) => _coils.FirstOrDefault(coil => coil.Origin.Tag == tag).InForce ?? [];

    /// <summary>Everybody who had a coil in hand, in order of entry, and who began its batch.</summary>
    public IReadOnlyList<string> PeopleOf(string tag) =>
        [
            .. EventsOf(tag)
                .Select(one => one.Person)
                .Concat(InForce(tag).Select(reading => reading.Person))
                .Append(Batch.Person)
                .Where(person => person.Length > 0)
                .Distinct(StringComparer.OrdinalIgnoreCase),
        ];

    /// <summary>Label of the spool that was on at a moment; empty when none was named.</summary>
    public string SpoolAt(DateTimeOffset timeUtc) => _origins.SpoolAt(timeUtc);

    /// <summary>Real turns a coil was to have when it was wound, or has since it was ended low; null for the recipe's.</summary>
    public double? TurnsOf(string tag) => History.EndedLow.TryGetValue(tag, out double ended) ? ended : TurnsAt(OriginOf(tag).WoundUtc);

    /// <summary>Signals of the run's chart that one coil completes.</summary>
    public IReadOnlyList<string> SignalsAt(string tag) =>
        [
            .. BatchChart
                .Signals(
                    _coils.Zip(BatchJudgement.WithoutCauses(RequireLimits(), _evidence), (coil, verdict) => (coil.Origin.Tag, verdict))
                )
                .Where(signal => signal.Tag == tag)
                .Select(signal => signal.Rule),
        ];

    private IEnumerable<BatchEvent> EventsOf(string tag) => History.InForce.Where(one => one.Tag == tag);

    private double? TurnsAt(DateTimeOffset timeUtc) =>
        History.InForce.OfType<SpoolTaken>().LastOrDefault(one => one.TimeUtc <= timeUtc)?.Turns;

    private Dictionary<string, Verdict> Weigh()
    {
        if (_limits is null)
        {
            return [];
        }

        IReadOnlyList<Verdict> verdicts = BatchJudgement.Weigh(_limits, [.. _coils.Select(coil => coil.InForce)]);
        return _coils.Zip(verdicts).ToDictionary(pair => pair.First.Origin.Tag, pair => pair.Second, StringComparer.Ordinal);
    }

    private CoilDossier[] Judge(int[] places)
    {
        VerdictLimits limits = RequireLimits();
        lock (_judging)
        {
            int[] missing = [.. places.Where(place => _judged[place] is null)];
            if (missing.Length > 0)
            {
                JudgedBatch judged = BatchJudgement.JudgeSome(limits, _evidence, missing, Rates);
                _remarks = judged.Remarks;
                foreach ((int place, Verdict verdict) in missing.Zip(judged.Verdicts))
                {
                    _judged[place] = Dossier(place, verdict, limits);
                }
            }

            return [.. places.Select(place => _judged[place]!)];
        }
    }

    private CoilDossier Dossier(int place, Verdict verdict, VerdictLimits limits)
    {
        (CoilOrigin origin, IReadOnlyList<ReadingRecord> inForce, IReadOnlyList<ReadingRecord> superseded) = _coils[place];
        return new CoilDossier(origin.Tag, inForce, superseded, verdict, inForce.Max(reading => reading.TimeUtc))
        {
            Origin = origin,
            Limits = limits,
            People = PeopleOf(origin.Tag),
            Events = [.. EventsOf(origin.Tag)],
        };
    }
}
