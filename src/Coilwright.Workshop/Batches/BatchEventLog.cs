using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Workshop.Batches;

/// <summary>How a coil on a spindle stands.</summary>
public enum SpindleState
{
    Winding,
    Paused,
    Broken,

    /// <summary>Ended low; waits for its reading.</summary>
    Ended,
}

/// <summary>A coil on a spindle.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Machine">Name of the winder.</param>
/// <param name="State">What is happening.</param>
/// <param name="Counter">Counter at the last stop; null before the first.</param>
/// <param name="Turns">Real turns at the last stop; null before the first.</param>
/// <param name="Spliced">True when a break was spliced.</param>
/// <param name="Person">Who wound last.</param>
/// <param name="SinceUtc">Time of the last event.</param>
public sealed record CoilOnSpindle(
    string Tag,
    string Machine,
    SpindleState State,
    double? Counter,
    double? Turns,
    bool Spliced,
    string Person,
    DateTimeOffset SinceUtc
);

/// <summary>A batch's events as they hold: what was undone is left out.</summary>
public sealed class BatchEventLog
{
    private readonly Dictionary<string, CoilOnSpindle> _spindles = new(StringComparer.Ordinal);

    /// <summary>Reads the events.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="events">All of them in order of entry.</param>
    /// <param name="lastReadUtc">Time of each coil's last reading in force, by tag: a coil read after it was begun is off its
    /// spindle.</param>
    public BatchEventLog(BatchRecord batch, IReadOnlyList<BatchEvent> events, IReadOnlyDictionary<string, DateTimeOffset> lastReadUtc)
    {
        InForce = Holding(events);
        Spool = batch.Spool;
        foreach (BatchEvent one in InForce)
        {
            Follow(one);
        }

        foreach ((string tag, DateTimeOffset readUtc) in lastReadUtc)
        {
            if (_spindles.TryGetValue(tag, out CoilOnSpindle? coil) && readUtc >= coil.SinceUtc)
            {
                _spindles.Remove(tag);
            }
        }
    }

    /// <summary>Of a batch's events those that hold: what was undone is left out, and so are the undoings.</summary>
    public static IReadOnlyList<BatchEvent> Holding(IReadOnlyList<BatchEvent> events)
    {
        HashSet<Guid> undone = [.. events.OfType<Undone>().Select(one => one.Undoes)];
        return [.. events.Where(one => one is not Undone && !undone.Contains(one.Id))];
    }

    /// <summary>Events not undone, in order of entry.</summary>
    public IReadOnlyList<BatchEvent> InForce { get; }

    /// <summary>Label of the spool in use; empty when none was named.</summary>
    public string Spool { get; private set; }

    /// <summary>Turns to wind when the choice at a spool changed them; null for the recipe's.</summary>
    public double? WantedTurns { get; private set; }

    /// <summary>The release of the series; null while it waits for the first piece.</summary>
    public Released? Release { get; private set; }

    /// <summary>Why it ended before its number; null while it did not.</summary>
    public Closed? Closing => ClosingOf(InForce);

    /// <summary>The closing among a batch's events in force; null when it was not closed.</summary>
    public static Closed? ClosingOf(IEnumerable<BatchEvent> inForce) => inForce.OfType<Closed>().LastOrDefault();

    /// <summary>Tags of coils with a splice.</summary>
    public HashSet<string> Spliced { get; } = new(StringComparer.Ordinal);

    /// <summary>Real turns of coils that were ended low, by tag.</summary>
    public Dictionary<string, double> EndedLow { get; } = new(StringComparer.Ordinal);

    /// <summary>Coils on spindles, in order of their last event.</summary>
    public IReadOnlyList<CoilOnSpindle> OnSpindles => [.. _spindles.Values.OrderBy(coil => coil.SinceUtc)];

    private void Follow(BatchEvent one)
    {
        switch (one)
        {
            case SpoolTaken taken:
                Spool = taken.Spool;
                WantedTurns = taken.Turns;
                break;
            case Released released:
                Release = released;
                break;
            case Begun begun:
                Spliced.Remove(one.Tag);
                EndedLow.Remove(one.Tag);
                _spindles[one.Tag] = new CoilOnSpindle(
                    one.Tag,
                    begun.Machine,
                    SpindleState.Winding,
                    null,
                    null,
                    false,
                    one.Person,
                    one.TimeUtc
                );
                break;
            case Scrapped:
                _spindles.Remove(one.Tag);
                break;
            case SpindleEvent happened:
                FollowCoil(happened);
                break;
        }
    }

    private void FollowCoil(SpindleEvent one)
    {
        if (!_spindles.TryGetValue(one.Tag, out CoilOnSpindle? coil))
        {
            return;
        }

        if (one is Events.Spliced)
        {
            Spliced.Add(one.Tag);
        }

        if (one is FinishedLow && (one.Turns ?? coil.Turns) is { } turns)
        {
            EndedLow[one.Tag] = turns;
        }

        _spindles[one.Tag] = coil with
        {
            State = one.StateAfter,
            Counter = one.Counter ?? coil.Counter,
            Turns = one.Turns ?? coil.Turns,
            Spliced = Spliced.Contains(one.Tag),
            Person = one.Person.Length > 0 ? one.Person : coil.Person,
            SinceUtc = one.TimeUtc,
        };
    }
}
