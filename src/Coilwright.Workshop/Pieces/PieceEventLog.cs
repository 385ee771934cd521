using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>The events of a piece as they hold: what was undone is left out.</summary>
public sealed class PieceEventLog
{
    /// <summary>Words of the two steps that a piece which came back goes through again.</summary>
    public const string FinalTest = "final test",
        Packing = "packing";

    /// <summary>Word of the step that putting a piece together is.</summary>
    public const string Assembly = "assembly";

    /// <summary>Reads the events.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="events">All of them in order of entry.</param>
    /// <param name="ahead">Events that a clock which was ahead made; null for none.</param>
    public PieceEventLog(PieceRecord piece, IReadOnlyList<PieceEvent> events, IReadOnlySet<Guid>? ahead = null)
    {
        All = events;
        _ahead = ahead;
        InForce = [.. Hold(events).Select(one => Mending(one) is { } mended ? one with { TimeUtc = mended.RightUtc } : one)];
        int back = LastIndex<Returned>();
        Runs =
        [
            new StepRun(Assembly, piece.TimeUtc, piece.TimeUtc),
            .. RunsOf([.. InForce.Where((one, place) => place > back || one is not StepEvent { Step: FinalTest or Packing })]),
        ];
        Test = InForce.Skip(back + 1).OfType<Tested>().LastOrDefault();
        if (Test is { Passed: true } passed)
        {
            Runs = [.. Runs, new StepRun(FinalTest, passed.TimeUtc, passed.TimeUtc)];
        }

        Shipment = InForce.Skip(back + 1).OfType<Shipped>().LastOrDefault();
        if (Shipment is not null)
        {
            Runs = [.. Runs, new StepRun(Packing, Shipment.TimeUtc, Shipment.TimeUtc)];
        }

        Holds = [.. InForce.OfType<Held>().Select(HoldOf)];
    }

    private readonly IReadOnlySet<Guid>? _ahead;

    /// <summary>Every event in order of entry: those taken back and their undoing too.</summary>
    public IReadOnlyList<PieceEvent> All { get; }

    /// <summary>Every event that has a line of its own, in order of entry.</summary>
    public IEnumerable<PieceEvent> Lines => All.Where(one => one.HasLine);

    /// <summary>Events not undone, in order of entry.</summary>
    public IReadOnlyList<PieceEvent> InForce { get; }

    /// <summary>Steps as they were done; after a return, the final test and packing count anew.</summary>
    public IReadOnlyList<StepRun> Runs { get; }

    /// <summary>Holds that persons or alarms put on it, the lifted ones too.</summary>
    public IReadOnlyList<Hold> Holds { get; }

    /// <summary>The final test that holds; null when there is none since the last return.</summary>
    public Tested? Test { get; }

    /// <summary>The shipment that holds; null while it is in the shop.</summary>
    public Shipped? Shipment { get; }

    /// <summary>Who it is kept for since it last left the shop; null when for nobody.</summary>
    public Reserved? Reservation => InForce.Reverse().TakeWhile(one => one is not Shipped).OfType<Reserved>().FirstOrDefault();

    /// <summary>The last time it came back; null when it never did.</summary>
    public Returned? Return => InForce.OfType<Returned>().LastOrDefault();

    /// <summary>The step in which it was marked with ink last; null when it never was.</summary>
    public StepBegun? Marked => InForce.OfType<StepBegun>().LastOrDefault(one => one.MixId is not null);

    /// <summary>True once it was given up.</summary>
    public bool IsScrapped => InForce.Any(one => one is Scrapped);

    /// <summary>True when the shop keeps it as its measure.</summary>
    public bool IsGolden => InForce.Any(one => one is MadeGolden);

    /// <summary>True for an event that a later one took back.</summary>
    public bool IsTakenBack(PieceEvent one) => All.OfType<Undone>().Any(undo => undo.About == one.Id);

    /// <summary>True for an event whose time a clock that was ahead gave, and nobody has mended yet.</summary>
    public bool IsAhead(PieceEvent one) => (_ahead?.Contains(one.Id) ?? false) && Mending(one) is null;

    /// <summary>Steps that a clock which was ahead ended, so that they and their holds may have been too short.</summary>
    public IReadOnlyList<string> EndedEarly =>
        [
            .. InForce
                .OfType<StepEnded>()
                .Where(one => IsAhead(one) && InForce.OfType<StepBegun>().Any(begun => begun.Step == one.Step && !IsAhead(begun)))
                .Select(one => one.Step)
                .Distinct(),
        ];

    /// <summary>The tablet's times of an event that was told late; null for one told at once.</summary>
    public LateEntry? LateOf(PieceEvent one) => All.OfType<ToldLate>().FirstOrDefault(told => told.About == one.Id)?.Times;

    /// <summary>True when the piece is in the shop: neither given up, nor shipped without having come back.</summary>
    public static bool IsInShop(IReadOnlyList<PieceEvent> events)
    {
        PieceEvent? last = Hold(events).LastOrDefault(one => one is Shipped or Returned or Scrapped);
        return last is null or Returned;
    }

    /// <summary>The event that put it into the set it stands in; null when it stands in none.</summary>
    public static JoinedSet? Joining(IReadOnlyList<PieceEvent> events) =>
        Hold(events).LastOrDefault(one => one is JoinedSet or LeftSet) as JoinedSet;

    /// <summary>The time that an event was given last; null when its own holds.</summary>
    private TimeMended? Mending(PieceEvent one) => All.OfType<TimeMended>().LastOrDefault(mend => mend.About == one.Id);

    private static IReadOnlyList<PieceEvent> Hold(IReadOnlyList<PieceEvent> events)
    {
        HashSet<Guid> undone = [.. events.OfType<Undone>().Select(one => one.About)];
        return [.. events.Where(one => one is not Remark && !undone.Contains(one.Id))];
    }

    private int LastIndex<T>()
        where T : PieceEvent
    {
        for (int at = InForce.Count - 1; at >= 0; at--)
        {
            if (InForce[at] is T)
            {
                return at;
            }
        }

        return -1;
    }

    private IEnumerable<StepRun> RunsOf(IReadOnlyList<PieceEvent> events)
    {
        foreach (IGrouping<string, StepEvent> step in events.OfType<StepEvent>().GroupBy(one => one.Step, StringComparer.Ordinal))
        {
            StepEvent begun = step.First();
            yield return new StepRun(
                step.Key,
                LateEntry.MadeUtc(LateOf(begun), begun.TimeUtc),
                step.OfType<StepEnded>().LastOrDefault()?.TimeUtc
            );
        }
    }

    private Hold HoldOf(Held held)
    {
        Lifted? lifted = InForce.OfType<Lifted>().FirstOrDefault(one => one.HoldId == held.Id);
        return new Hold(held.Reason, held.TimeUtc, null, lifted?.TimeUtc, lifted?.Reason ?? "");
    }
}
