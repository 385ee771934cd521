namespace Coilwright.Workshop.ControlCharts;

/// <summary>What a person chose on the wall, as typed; empty takes the usual.</summary>
public sealed record ChartSettingsForm
{
    /// <summary>Id of a recipe; empty for a batch's own.</summary>
    public string Recipe { get; init; } = "";

    /// <summary>Name of the recipe's coil; empty takes the first.</summary>
    public string Coil { get; init; } = "";

    /// <summary>Id of one batch; empty for all of the recipe.</summary>
    public string Batch { get; init; } = "";
    public string Machine { get; init; } = "";
    public string Spool { get; init; } = "";
    public string Person { get; init; } = "";
    public string Quantity { get; init; } = "";

    /// <summary>How many of the last coils.</summary>
    public string Last { get; init; } = "";

    /// <summary>"frozen", from the first coils; "running"; empty for those that the shop keeps, else frozen.</summary>
    public string Limits { get; init; } = "";

    /// <summary>From how many coils frozen limits are taken.</summary>
    public string From { get; init; } = "";

    /// <summary>Tag, or batch/tag, of the coil that newly taken limits begin at; empty for the first of all.</summary>
    public string Since { get; init; } = "";

    /// <summary>Why limits were taken anew.</summary>
    public string Why { get; init; } = "";
    public string Group { get; init; } = "";

    /// <summary>"range" or "deviation".</summary>
    public string Spread { get; init; } = "";

    /// <summary>"western-electric" or "nelson".</summary>
    public string Rules { get; init; } = "";
    public string Lambda { get; init; } = "";
    public string Allowance { get; init; } = "";
    public string Decision { get; init; } = "";

    /// <summary>"both", "lower" or "upper".</summary>
    public string Sides { get; init; } = "";

    /// <summary>"normal", "log-normal" or "as-they-lie".</summary>
    public string Shape { get; init; } = "";
}
