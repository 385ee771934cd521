using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches.Summaries;

/// <summary>
/// How a batch stands, in short. It follows from the batch's records and is kept beside them until they grow, so that a list of many
/// batches reads none of their coils.
/// </summary>
public sealed record BatchSummary
{
    public required Guid BatchId { get; init; }

    /// <summary>Where it stands; null for one that this program cannot show.</summary>
    public required BatchState? State { get; init; }

    /// <summary>Coils wanted: the batch's number and what was asked for since.</summary>
    public int Wanted { get; init; }

    /// <summary>Coils begun.</summary>
    public int Begun { get; init; }

    /// <summary>How many of them are beyond the number.</summary>
    public int Beyond { get; init; }

    /// <summary>Why it ended before its number; null while it did not.</summary>
    public Closed? Closing { get; init; }

    /// <summary>True when every coil that is wanted was entered.</summary>
    public bool IsDone => BatchNumber.IsDone(Begun, Beyond, Wanted);

    /// <summary>How many of them pass, are on hold, and are rejected, as they were judged when the newest record came.</summary>
    public int Pass { get; init; }
    public int Hold { get; init; }
    public int Reject { get; init; }

    /// <summary>How far it is: "24 of 24 done".</summary>
    public string CountWords { get; init; } = "";

    /// <summary>The tag proposed for the next coil; null when the batch is full or was closed.</summary>
    public string? NextTag { get; init; }

    /// <summary>The coils begun last, in order of first entry, with their verdicts.</summary>
    public IReadOnlyList<JudgedTag> Newest { get; init; } = [];

    /// <summary>What its coils took from spools, coils alike together.</summary>
    public IReadOnlyList<WireTaken> Wire { get; init; } = [];

    /// <summary>The summary of a batch as its records are.</summary>
    public static BatchSummary Of(BatchDossier dossier)
    {
        IReadOnlyList<CoilDossier> coils = dossier.Coils;
        int Count(VerdictKind kind) => coils.Count(coil => coil.Verdict.Kind == kind);
        return new BatchSummary
        {
            BatchId = dossier.Batch.Id,
            State = dossier.State,
            Wanted = dossier.Wanted,
            Begun = coils.Count,
            Beyond = dossier.Beyond.Count,
            Closing = dossier.History.Closing,
            Pass = Count(VerdictKind.Pass),
            Hold = Count(VerdictKind.Hold),
            Reject = Count(VerdictKind.Reject),
            CountWords = dossier.CountWords,
            NextTag = dossier.NextTag,
            Newest = [.. coils.TakeLast(3).Select(coil => new JudgedTag(coil.Tag, coil.Verdict.Kind))],
            Wire = [.. WireTaken.Of(dossier)],
        };
    }

    /// <summary>The summary of a batch that this program cannot show.</summary>
    public static BatchSummary Unreadable(Guid batchId) => new() { BatchId = batchId, State = null };
}

/// <summary>A coil with its verdict.</summary>
/// <param name="Tag">The coil.</param>
/// <param name="Kind">Its verdict.</param>
public sealed record JudgedTag(string Tag, VerdictKind Kind);

/// <summary>Coils of a batch that took the same from the same spool.</summary>
/// <param name="Spool">Label of the spool; empty for none.</param>
/// <param name="Turns">Real turns of each; null for the recipe's.</param>
/// <param name="Scrapped">True for coils that were scrapped.</param>
/// <param name="Coils">How many.</param>
/// <param name="FirstUtc">When the first of them was wound.</param>
/// <param name="LastUtc">When the last of them was.</param>
public sealed record WireTaken(string Spool, double? Turns, bool Scrapped, int Coils, DateTimeOffset FirstUtc, DateTimeOffset LastUtc)
{
    /// <summary>
    /// What the coils of a batch took: one for each coil that has a reading in force, and one for each coil scrapped; an undone reading or
    /// event takes nothing.
    /// </summary>
    internal static IEnumerable<WireTaken> Of(BatchDossier dossier) =>
        Each(dossier)
            .GroupBy(one => (one.Spool, one.Turns, one.Scrapped))
            .Select(same => new WireTaken(
                same.Key.Spool,
                same.Key.Turns,
                same.Key.Scrapped,
                same.Count(),
                same.Min(one => one.AtUtc),
                same.Max(one => one.AtUtc)
            ));

    /// <summary>The same coil by coil, with their tags.</summary>
    internal static IEnumerable<(string Spool, double? Turns, bool Scrapped, string Tag, DateTimeOffset AtUtc)> Each(
        BatchDossier dossier
    ) =>
        dossier
            .Tags.Select(dossier.OriginOf)
            .Select(coil => (coil.Spool, dossier.TurnsOf(coil.Tag), false, coil.Tag, coil.WoundUtc))
            .Concat(
                dossier
                    .History.InForce.OfType<Scrapped>()
                    .Select(scrap => (dossier.SpoolAt(scrap.TimeUtc), scrap.Turns, true, scrap.Tag, scrap.TimeUtc))
            );
}
