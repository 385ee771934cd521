using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>What the wall shows, and what else could be chosen.</summary>
/// <param name="Form">What was chosen, as typed.</param>
/// <param name="Problems">Every problem of it; then there is no wall.</param>
/// <param name="ControlChart">The charts; null with problems or with fewer than two coils.</param>
public sealed record ChartResult(ChartSettingsForm Form, IReadOnlyList<Problem> Problems, ControlChart? ControlChart)
{
    /// <summary>Recipes that have batches, newest batch first.</summary>
    public IReadOnlyList<(Guid Id, string Name)> Recipes { get; init; } = [];
    public Guid? Recipe { get; init; }

    /// <summary>Coils of the chosen recipe that have batches.</summary>
    public IReadOnlyList<string> Coils { get; init; } = [];
    public string Coil { get; init; } = "";

    /// <summary>Batches of the chosen recipe and coil, newest first.</summary>
    public IReadOnlyList<BatchRecord> Batches { get; init; } = [];
    public Guid? Batch { get; init; }
    public IReadOnlyList<string> Machines { get; init; } = [];
    public IReadOnlyList<string> Spools { get; init; } = [];

    /// <summary>Those of the drawn batches that cannot be shown: their coils have no verdict and do not count.</summary>
    public IReadOnlyList<UnreadableRecord> Unreadable { get; init; } = [];

    /// <summary>How many of the last coils were asked for.</summary>
    public int Last { get; init; }

    /// <summary>Limits that the shop keeps for this chart, when they are drawn; null for others.</summary>
    public ChartLimits? Kept { get; init; }

    /// <summary>How the limits came about, in words.</summary>
    public string LimitsWords { get; init; } = "";

    /// <summary>Readings left out because they were taken at another frequency.</summary>
    public int OtherFrequency { get; init; }
}
