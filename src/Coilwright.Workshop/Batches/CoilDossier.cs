using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>Everything the shop knows of one coil of a batch, worked out in one place.</summary>
/// <param name="Tag">The coil's tag as it is now.</param>
/// <param name="InForce">Readings that hold, in order of entry.</param>
/// <param name="Superseded">Readings that were corrected since.</param>
/// <param name="Verdict">Its verdict, with the value at 20 °C and the causes.</param>
/// <param name="LastUtc">When it was read last.</param>
public sealed record CoilDossier(
    string Tag,
    IReadOnlyList<ReadingRecord> InForce,
    IReadOnlyList<ReadingRecord> Superseded,
    Verdict Verdict,
    DateTimeOffset LastUtc
)
{
    /// <summary>Where it came from: spool, winder and time.</summary>
    public required CoilOrigin Origin { get; init; }

    /// <summary>What it was judged against, and where that comes from.</summary>
    public required VerdictLimits Limits { get; init; }

    /// <summary>Everybody who wound, read or began it, without doubles.</summary>
    public required IReadOnlyList<string> People { get; init; }

    /// <summary>Its own events that hold, in order of entry.</summary>
    public required IReadOnlyList<BatchEvent> Events { get; init; }

    /// <summary>Its resistance at 20 °C, Ω; null when there is no usable one.</summary>
    public double? OhmAt20C => Verdict.DcResistanceAt20C?.Value;
}
