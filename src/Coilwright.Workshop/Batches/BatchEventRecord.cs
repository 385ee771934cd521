namespace Coilwright.Workshop.Batches;

/// <summary>What can happen to a coil or a batch besides a reading.</summary>
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

    /// <summary>Another event was taken back.</summary>
    Undone,
}

/// <summary>One event of a batch. Never edited: an undo is a new event that names the one it takes back.</summary>
public sealed record BatchEventRecord
{
    /// <summary>Client-made id; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }
    public required BatchEventKind Kind { get; init; }

    /// <summary>The coil's tag; empty for an event of the whole batch.</summary>
    public string Tag { get; init; } = "";

    /// <summary>
    /// What the counter showed; null when none was noted. For <see cref="BatchEventKind.MoreWanted"/> how many coils more.
    /// </summary>
    public double? Counter { get; init; }

    /// <summary>
    /// Real turns that the counter stands for on that machine; for <see cref="BatchEventKind.SpoolTaken"/> the turns to wind from now on.
    /// </summary>
    public double? Turns { get; init; }

    /// <summary>Label of a spool.</summary>
    public string Spool { get; init; } = "";

    /// <summary>"hold-turns" or "hold-ohms"; empty for other events.</summary>
    public string Choice { get; init; } = "";

    /// <summary>Name of the winder.</summary>
    public string Machine { get; init; } = "";
    public string Person { get; init; } = "";
    public string Note { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>The event taken back.</summary>
    public Guid? Undoes { get; init; }
}
