using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Stock;

/// <summary>What the coils of batches took from the shop's spools.</summary>
internal sealed class SpoolUses
{
    private readonly IShopRecords _records;
    private readonly BatchDossiers _dossiers;
    private readonly KnownParts _parts;
    private readonly Dictionary<(Guid, int), RevisionRecord?> _revisions = [];
    private readonly List<(string Spool, SpoolUse Use)> _uses = [];
    private readonly List<(string Spool, string Batch)> _unread = [];
    private ILookup<string, SpoolUse>? _ofSpool;

    private SpoolUses(IShopRecords records, BatchDossiers dossiers, KnownParts parts) =>
        (_records, _dossiers, _parts) = (records, dossiers, parts);

    /// <summary>What was taken from every spool.</summary>
    /// <param name="records">The shop's records.</param>
    /// <param name="dossiers">Its dossiers.</param>
    /// <param name="weighedUtc">
    /// When each spool was weighed last: coils alike of a batch are then one use, unless a weighing lies between them. Null for each coil
    /// by itself.
    /// </param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<SpoolUses> OfAllAsync(
        IShopRecords records,
        BatchDossiers dossiers,
        IReadOnlyDictionary<string, DateTimeOffset>? weighedUtc,
        CancellationToken cancel
    )
    {
        SpoolUses uses = await NewAsync(records, dossiers, cancel).ConfigureAwait(false);
        IReadOnlyDictionary<Guid, BatchSummary> summaries = weighedUtc is null
            ? new Dictionary<Guid, BatchSummary>()
            : await records.Summaries.AllAsync(cancel).ConfigureAwait(false);
        foreach (BatchRecord batch in await records.Batches.AllAsync(cancel).ConfigureAwait(false))
        {
            bool isShort =
                summaries.GetValueOrDefault(batch.Id) is { State: not null } known
                && !known.Wire.Any(one => weighedUtc!.TryGetValue(one.Spool, out DateTimeOffset at) && IsBetween(one, at));
            await uses.AddAsync(batch, isShort ? summaries[batch.Id] : null, cancel).ConfigureAwait(false);
        }

        return uses;
    }

    /// <summary>What was taken from some spools, each coil by itself; other uses of the same batches may be among them.</summary>
    public static async Task<SpoolUses> OfAsync(
        IShopRecords records,
        BatchDossiers dossiers,
        IEnumerable<string> labels,
        CancellationToken cancel
    )
    {
        SpoolUses uses = await NewAsync(records, dossiers, cancel).ConfigureAwait(false);
        List<BatchRecord> batches = [];
        foreach (string label in labels)
        {
            batches.AddRange(await records.Batches.WithSpoolAsync(label, cancel).ConfigureAwait(false));
        }

        foreach (BatchRecord batch in batches.DistinctBy(batch => batch.Id))
        {
            await uses.AddAsync(batch, null, cancel).ConfigureAwait(false);
        }

        return uses;
    }

    /// <summary>Uses of a spool in order of time.</summary>
    public SpoolUse[] Of(string label) =>
        [
            .. (_ofSpool ??= _uses.ToLookup(pair => pair.Spool, pair => pair.Use, StringComparer.OrdinalIgnoreCase))[label]
                .OrderBy(use => use.TimeUtc),
        ];

    /// <summary>Names of batches of a spool of which cannot be told what they took.</summary>
    public string[] UnreadOf(string label) =>
        [.. _unread.Where(pair => NameKey.Same(pair.Spool, label)).Select(pair => pair.Batch).Distinct()];

    private static async Task<SpoolUses> NewAsync(IShopRecords records, BatchDossiers dossiers, CancellationToken cancel) =>
        new(records, dossiers, await KnownParts.ReadAsync(records.Recipes, records.Rules, cancel).ConfigureAwait(false));

    private static bool IsBetween(WireTaken coils, DateTimeOffset atUtc) => coils.FirstUtc <= atUtc && atUtc < coils.LastUtc;

    private async Task AddAsync(BatchRecord batch, BatchSummary? summary, CancellationToken cancel)
    {
        bool hasSpool = summary is { Wire: var taken }
            ? taken.Any(one => one.Spool.Length > 0)
            : (await LabelsAsync(batch, cancel).ConfigureAwait(false)).Count > 0;
        if (!hasSpool)
        {
            return;
        }

        RevisionRecord? revision = await RevisionAsync(batch, cancel).ConfigureAwait(false);
        RecordStatus<CoilPlan>? plan = revision is null
            ? null
            : await RecordStatus
                .ReadAsync("Batch " + batch.Name, () => Task.FromResult(CoilPlan.Of(revision, batch.CoilName, _parts)))
                .ConfigureAwait(false);
        if (plan is { Value: null })
        {
            IReadOnlyList<string> labels = await LabelsAsync(batch, cancel).ConfigureAwait(false);
            _unread.AddRange(labels.Select(label => (label, batch.Name)));
        }
        else if (plan is { Value: { } known })
        {
            _uses.AddRange(
                summary is null
                    ? SpoolBooking.Of(await _dossiers.OfAsync(batch, cancel).ConfigureAwait(false), known)
                    : SpoolBooking.Of(batch, summary, known)
            );
        }
    }

    /// <summary>Labels of the spools that a batch was begun on or took later.</summary>
    private async Task<IReadOnlyList<string>> LabelsAsync(BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<BatchEvent> events = await _records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false);
        return [.. events.OfType<SpoolTaken>().Select(one => one.Spool).Append(batch.Spool).Where(label => label.Length > 0).Distinct()];
    }

    private async Task<RevisionRecord?> RevisionAsync(BatchRecord batch, CancellationToken cancel)
    {
        (Guid, int) key = (batch.RecipeId, batch.RevisionNumber);
        if (!_revisions.TryGetValue(key, out RevisionRecord? revision))
        {
            revision = await _records.Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false);
            _revisions[key] = revision;
        }

        return revision;
    }
}
