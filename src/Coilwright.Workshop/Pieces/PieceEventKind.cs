namespace Coilwright.Workshop.Pieces;

/// <summary>What can happen to a piece.</summary>
public enum PieceEventKind
{
    /// <summary>A step began.</summary>
    StepBegun,

    /// <summary>A step ended.</summary>
    StepEnded,

    /// <summary>A hold was put on it; a person must lift it.</summary>
    Held,

    /// <summary>A hold was lifted, with a reason.</summary>
    Lifted,

    /// <summary>The final test was made.</summary>
    Tested,

    /// <summary>The shop keeps this piece as its measure.</summary>
    MadeGolden,

    /// <summary>It left for a customer.</summary>
    Shipped,

    /// <summary>It came back.</summary>
    Returned,

    /// <summary>What came back was looked at and measured.</summary>
    Examined,

    /// <summary>A part was taken out.</summary>
    PartOut,

    /// <summary>It was mended or wound anew.</summary>
    Repaired,

    /// <summary>It was given up.</summary>
    Scrapped,

    /// <summary>Its magnets were charged or knocked down outside their step, for example after a repair.</summary>
    Charged,

    /// <summary>It was matched with others to a set.</summary>
    JoinedSet,

    /// <summary>It left its set.</summary>
    LeftSet,

    /// <summary>A word about it, nothing more.</summary>
    Noted,

    /// <summary>Another event was taken back.</summary>
    Undone,

    /// <summary>Another event was told late: it waited on a tablet, with the times that the tablet showed.</summary>
    ToldLate,

    /// <summary>
    /// A person said that the clock was right while records stood later than it: those were made by a clock that was ahead.
    /// </summary>
    ClockSaidRight,

    /// <summary>The time of another event was mended, with the reason; the first line of its words is the right time.</summary>
    TimeMended,
}
