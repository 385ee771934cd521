using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>Where each coil of a batch came from: the one answer for verdict, stock, charts, trace and papers.</summary>
/// <remarks>
/// A coil came from the spool that was on when it was first entered. A correction keeps that moment, also when it corrects the tag. A tag
/// entered again
/// after its undo is the same coil, unless somebody said that it is a new one, or a coil of that tag was begun or scrapped in between.
/// </remarks>
public sealed class CoilOrigins
{
    private readonly BatchRecord _batch;
    private readonly List<SpoolTaken> _spools;
    private readonly ILookup<string, BatchEvent> _eventsOf;
    private readonly Dictionary<string, Chain> _standing = new(StringComparer.Ordinal);
    private readonly ILookup<string, Chain> _takenBack;

    /// <summary>Reads the records.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="events">All of its events in order of entry.</param>
    /// <param name="readings">All of its readings in order of entry, those taken back too.</param>
    public CoilOrigins(BatchRecord batch, IReadOnlyList<BatchEvent> events, IReadOnlyList<ReadingRecord> readings)
    {
        _batch = batch;
        IReadOnlyList<BatchEvent> held = new BatchEventLog(batch, events, new Dictionary<string, DateTimeOffset>()).InForce;
        _spools = [.. held.OfType<SpoolTaken>()];
        _eventsOf = held.ToLookup(one => one.Tag, StringComparer.Ordinal);
        IReadOnlyDictionary<Guid, ReadingRecord> firsts = ReadingChain.Firsts(readings);
        HashSet<Guid> superseded = [.. readings.Select(reading => reading.Supersedes).OfType<Guid>()];
        Dictionary<Guid, int> placeOf = readings
            .Select((reading, place) => (reading.Id, place))
            .ToDictionary(one => one.Id, one => one.place);
        Chain[] chains =
        [
            .. readings
                .Where(reading => !superseded.Contains(reading.Id))
                .Select(last => new Chain(firsts[last.Id], last, placeOf[firsts[last.Id].Id]))
                .OrderBy(chain => chain.Place),
        ];
        foreach (Chain chain in chains.Where(chain => !chain.Last.Withdraws))
        {
            _standing.TryAdd(chain.Last.Tag, chain);
        }

        _takenBack = chains.Where(chain => chain.Last.Withdraws).ToLookup(chain => chain.Last.Tag, StringComparer.Ordinal);
        Tags = [.. _standing.Values.OrderBy(chain => chain.Place).Select(chain => chain.Last.Tag)];
    }

    /// <summary>Tags of the coils that have a reading in force, in order of first entry.</summary>
    public IReadOnlyList<string> Tags { get; }

    /// <summary>Where a coil came from.</summary>
    /// <remarks>One that has no reading in force is answered by what was taken back, or else by what the batch was begun with.</remarks>
    public CoilOrigin Of(string tag)
    {
        if (_standing.TryGetValue(tag, out Chain? entered))
        {
            Chain first = FirstEntry(entered);
            string spool = SpoolAt(first.First.TimeUtc),
                then = SpoolAt(entered.First.TimeUtc);
            bool again = first != entered && first.Last.TimeUtc <= entered.First.TimeUtc;
            bool assumed = again && entered.First.NewCoil is null && !Same(spool, then);
            return new CoilOrigin(tag, first.First.TimeUtc, spool, MachineOf(tag, entered.First.TimeUtc))
            {
                OtherSpool = assumed ? then : "",
            };
        }

        if (_takenBack[tag].LastOrDefault() is not { } gone)
        {
            return new CoilOrigin(tag, _batch.BegunUtc, _batch.Spool, MachineOf(tag, DateTimeOffset.MaxValue));
        }

        DateTimeOffset woundUtc = FirstEntry(gone).First.TimeUtc;
        return new CoilOrigin(tag, woundUtc, SpoolAt(woundUtc), MachineOf(tag, gone.First.TimeUtc));
    }

    /// <summary>Label of the spool that was on at a moment; empty when none was named.</summary>
    public string SpoolAt(DateTimeOffset timeUtc) => _spools.LastOrDefault(one => one.TimeUtc <= timeUtc)?.Spool ?? _batch.Spool;

    /// <summary>What to ask before a tag is entered again; null when nothing is in doubt.</summary>
    public SpoolQuestion? Ask(string tag)
    {
        bool stands = _standing.ContainsKey(tag);
        if (stands || _takenBack[tag].LastOrDefault() is not { } gone || BegunAnew(tag, gone.Last.TimeUtc, DateTimeOffset.MaxValue))
        {
            return null;
        }

        string before = SpoolAt(FirstEntry(gone).First.TimeUtc),
            now = SpoolAt(DateTimeOffset.MaxValue);
        return Same(before, now) ? null : new SpoolQuestion(tag, before, now);
    }

    /// <summary>Every question that the next entries of the batch may raise.</summary>
    public IReadOnlyList<SpoolQuestion> Questions() => [.. _takenBack.Select(coil => coil.Key).Select(Ask).OfType<SpoolQuestion>()];

    /// <summary>The entry by which the coil of a chain was first known.</summary>
    /// <remarks>Earlier ones of its tag that were taken back are the same coil until one is not.</remarks>
    private Chain FirstEntry(Chain entered)
    {
        string tag = entered.First.Tag; // a corrected tag takes its coil's past with it
        Chain first = entered;
        foreach (Chain earlier in _takenBack[tag].Reverse().Where(chain => chain.Place < entered.Place))
        {
            if (first.First.NewCoil == true || BegunAnew(tag, earlier.Last.TimeUtc, first.First.TimeUtc))
            {
                break;
            }

            first = earlier;
        }

        return first;
    }

    private bool BegunAnew(string tag, DateTimeOffset afterUtc, DateTimeOffset untilUtc) =>
        _eventsOf[tag].Any(one => one is Begun or Scrapped && one.TimeUtc > afterUtc && one.TimeUtc <= untilUtc);

    private string MachineOf(string tag, DateTimeOffset untilUtc) =>
        _eventsOf[tag].OfType<WinderEvent>().LastOrDefault(one => one.Machine.Length > 0 && one.TimeUtc <= untilUtc)?.Machine
        ?? _batch.Machine;

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    /// <summary>A reading with all that took its place.</summary>
    /// <param name="First">As first entered.</param>
    /// <param name="Last">What holds now; an undo when it was taken back.</param>
    /// <param name="Place">Place of the first in the order of entry.</param>
    private sealed record Chain(ReadingRecord First, ReadingRecord Last, int Place);
}
