using Coilwright.Workshop.Readings;
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
    public PieceEventLog(PieceRecord piece, IReadOnlyList<PieceEventRecord> events, IReadOnlySet<Guid>? ahead = null)
    {
        All = events;
        _ahead = ahead;
        InForce = [.. Hold(events).Select(one => MendedTime.Of(one, events) is { } mended ? one with { TimeUtc = mended.TimeUtc } : one)];
        int back = LastIndex(PieceEventKind.Returned);
        Runs =
        [
            new StepRun(Assembly, piece.TimeUtc, piece.TimeUtc),
            .. RunsOf([.. InForce.Where((one, place) => place > back || one.Step is not (FinalTest or Packing))]),
        ];
        Test = InForce.Skip(back + 1).LastOrDefault(one => one.Kind == PieceEventKind.Tested);
        if (Test is { Passed: true } passed)
        {
            Runs = [.. Runs, new StepRun(FinalTest, passed.TimeUtc, passed.TimeUtc)];
        }

        Shipment = LastShipment(back);
        if (Shipment is not null)
        {
            Runs = [.. Runs, new StepRun(Packing, Shipment.TimeUtc, Shipment.TimeUtc)];
        }

        Holds = [.. InForce.Where(one => one.Kind == PieceEventKind.Held).Select(HoldOf)];
    }

    private readonly IReadOnlySet<Guid>? _ahead;

    /// <summary>Every event in order of entry: those taken back and their undoing too.</summary>
    public IReadOnlyList<PieceEventRecord> All { get; }

    /// <summary>Events not undone, in order of entry.</summary>
    public IReadOnlyList<PieceEventRecord> InForce { get; }

    /// <summary>Steps as they were done; after a return, the final test and packing count anew.</summary>
    public IReadOnlyList<StepRun> Runs { get; }

    /// <summary>Holds that persons or alarms put on it, the lifted ones too.</summary>
    public IReadOnlyList<Hold> Holds { get; }

    /// <summary>The final test that holds; null when there is none since the last return.</summary>
    public PieceEventRecord? Test { get; }

    /// <summary>The shipment that holds; null while it is in the shop.</summary>
    public PieceEventRecord? Shipment { get; }

    /// <summary>The last time it came back; null when it never did.</summary>
    public PieceEventRecord? Return => InForce.LastOrDefault(one => one.Kind == PieceEventKind.Returned);

    /// <summary>The ink it was marked with last; null when none was named.</summary>
    public Guid? MixId => InForce.LastOrDefault(one => one.MixId is not null)?.MixId;

    /// <summary>True once it was given up.</summary>
    public bool IsScrapped => InForce.Any(one => one.Kind == PieceEventKind.Scrapped);

    /// <summary>True when the shop keeps it as its measure.</summary>
    public bool IsGolden => InForce.Any(one => one.Kind == PieceEventKind.MadeGolden);

    /// <summary>True for an event that a later one took back.</summary>
    public bool IsTakenBack(PieceEventRecord one) => All.Any(undo => undo.Kind == PieceEventKind.Undone && undo.About == one.Id);

    /// <summary>True for an event whose time a clock that was ahead gave, and nobody has mended yet.</summary>
    public bool IsAhead(PieceEventRecord one) => (_ahead?.Contains(one.Id) ?? false) && MendedTime.Of(one, All) is null;

    /// <summary>Steps that a clock which was ahead ended, so that they and their holds may have been too short.</summary>
    public IReadOnlyList<string> EndedEarly =>
        [
            .. InForce
                .Where(one =>
                    one.Kind == PieceEventKind.StepEnded
                    && IsAhead(one)
                    && InForce.Any(begun => begun.Kind == PieceEventKind.StepBegun && begun.Step == one.Step && !IsAhead(begun))
                )
                .Select(one => one.Step)
                .Distinct(),
        ];

    /// <summary>The tablet's times of an event that was told late; null for one told at once.</summary>
    public LateEntry? LateOf(PieceEventRecord one) =>
        LateEntry.Read(All.FirstOrDefault(told => told.Kind == PieceEventKind.ToldLate && told.About == one.Id)?.Words);

    /// <summary>Records that go with events told late, one for each; none for those told at once.</summary>
    public static IEnumerable<PieceEventRecord> Told(IEnumerable<PieceEventRecord> events, LateEntry? told) =>
        told is null
            ? []
            : events.Select(one =>
                one with
                {
                    Id = ReadingChain.IdWithin(one.Id, "told"),
                    Kind = PieceEventKind.ToldLate,
                    About = one.Id,
                    Words = told.Text,
                    Step = "",
                    BasketId = null,
                    MixId = null,
                    CustomerId = null,
                    Passed = null,
                }
            );

    /// <summary>True when the piece is in the shop: neither given up, nor shipped without having come back.</summary>
    public static bool IsInShop(IReadOnlyList<PieceEventRecord> events)
    {
        PieceEventRecord? last = Hold(events)
            .LastOrDefault(one => one.Kind is PieceEventKind.Shipped or PieceEventKind.Returned or PieceEventKind.Scrapped);
        return last is null or { Kind: PieceEventKind.Returned };
    }

    /// <summary>The event that put it into the set it stands in; null when it stands in none.</summary>
    public static PieceEventRecord? JoinedSet(IReadOnlyList<PieceEventRecord> events) =>
        Hold(events).LastOrDefault(one => one.Kind is PieceEventKind.JoinedSet or PieceEventKind.LeftSet)
            is { Kind: PieceEventKind.JoinedSet } joined
            ? joined
            : null;

    private static IReadOnlyList<PieceEventRecord> Hold(IReadOnlyList<PieceEventRecord> events)
    {
        HashSet<Guid> undone = [.. events.Where(one => one.Kind == PieceEventKind.Undone).Select(one => one.About).OfType<Guid>()];
        return
        [
            .. events.Where(one =>
                one.Kind
                    is not (PieceEventKind.Undone or PieceEventKind.ToldLate or PieceEventKind.ClockSaidRight or PieceEventKind.TimeMended)
                && !undone.Contains(one.Id)
            ),
        ];
    }

    private int LastIndex(PieceEventKind kind)
    {
        for (int at = InForce.Count - 1; at >= 0; at--)
        {
            if (InForce[at].Kind == kind)
            {
                return at;
            }
        }

        return -1;
    }

    private PieceEventRecord? LastShipment(int back)
    {
        int shipped = LastIndex(PieceEventKind.Shipped);
        return shipped > back ? InForce[shipped] : null;
    }

    private IEnumerable<StepRun> RunsOf(IReadOnlyList<PieceEventRecord> events)
    {
        foreach (
            IGrouping<string, PieceEventRecord> step in events
                .Where(one => one.Kind is PieceEventKind.StepBegun or PieceEventKind.StepEnded)
                .GroupBy(one => one.Step, StringComparer.Ordinal)
        )
        {
            PieceEventRecord begun = step.First();
            yield return new StepRun(
                step.Key,
                LateEntry.MadeUtc(LateOf(begun), begun.TimeUtc),
                step.LastOrDefault(one => one.Kind == PieceEventKind.StepEnded)?.TimeUtc
            );
        }
    }

    private Hold HoldOf(PieceEventRecord held)
    {
        PieceEventRecord? lifted = InForce.FirstOrDefault(one => one.Kind == PieceEventKind.Lifted && one.About == held.Id);
        return new Hold(held.Words, held.TimeUtc, null, lifted?.TimeUtc, lifted?.Words ?? "");
    }
}
