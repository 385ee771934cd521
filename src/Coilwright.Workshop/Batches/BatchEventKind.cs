namespace Coilwright.Workshop.Batches;

/// <summary>What a person may say happened to a coil or a batch, by the name of the event it makes.</summary>
public enum BatchEventKind
{
    /// <summary>A coil was put on a spindle.</summary>
    Begun,

    /// <summary>The machine was stopped on purpose, with the counter noted.</summary>
    Paused,

    /// <summary>The wire broke, with the counter noted.</summary>
    Broken,

    /// <summary>Winding went on.</summary>
    Resumed,

    /// <summary>The break was spliced; the coil is marked.</summary>
    Spliced,

    /// <summary>The coil was ended at the turns it had.</summary>
    FinishedLow,

    /// <summary>The coil was scrapped and its wire lost.</summary>
    Scrapped,

    /// <summary>A spool was put on, and it was decided to hold turns or ohms.</summary>
    SpoolTaken,

    /// <summary>The first piece was looked at and the series released.</summary>
    Released,

    /// <summary>More coils are wanted than the batch was begun with.</summary>
    MoreWanted,

    /// <summary>A signal of the chart was looked into.</summary>
    SignalAnswered,

    /// <summary>It was found out what a coil really had.</summary>
    CauseFound,

    /// <summary>The batch ends before its number.</summary>
    Closed,

    /// <summary>Another event was taken back.</summary>
    Undone,
}
