using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tracing;

/// <summary>From a batch, a coil's tag or a winder to every piece.</summary>
internal sealed class BatchTrace(IShopRecords records, PieceService shelf)
{
    /// <summary>Batches of a name; an older shop may hold two.</summary>
    public async Task<IReadOnlyList<TraceHit>> BatchesAsync(string asked, CancellationToken cancel)
    {
        List<TraceHit> hits = [];
        foreach (
            BatchRecord batch in (await records.Batches.AllAsync(cancel).ConfigureAwait(false)).Where(batch =>
                NameKey.Same(batch.Name, asked)
            )
        )
        {
            Wound wound = await ReadAsync(batch, cancel).ConfigureAwait(false);
            int wanted = BatchNumber.Wanted(batch, wound.Events),
                within = wound.Tags.Length - BatchNumber.Beyond(batch, wanted, wound.Tags).Count;
            string recipe = await RecipeAsync(batch, cancel).ConfigureAwait(false),
                begun = await DayAsync(batch.BegunUtc, cancel).ConfigureAwait(false);
            string far = BatchNumber.Words(within, beyond: 0, wanted, BatchEventLog.ClosingOf(wound.Events)),
                words = $"a batch of {recipe}, coil {batch.CoilName}, begun {begun}, {far}";
            hits.Add(
                new TraceHit("batch", batch.Name, words, await PiecesAsync([(batch, wound.Tags)], cancel).ConfigureAwait(false))
                {
                    Id = batch.Id,
                    Loose = await LooseAsync([(batch, wound.Tags)], cancel).ConfigureAwait(false),
                }
            );
        }

        return hits;
    }

    /// <summary>
    /// Coils of a tag, with or without their batch: every one that has it. One that is not wound yet only when no other is meant.
    /// </summary>
    public async Task<IReadOnlyList<TraceHit>> CoilsAsync(string asked, CancellationToken cancel)
    {
        int stroke = asked.IndexOf('/', StringComparison.Ordinal);
        string name = stroke < 0 ? "" : asked[..stroke],
            typed = asked[(stroke + 1)..].Trim();
        List<(TraceHit Hit, bool Wound)> found = [];
        foreach (BatchRecord batch in await records.Batches.AllAsync(cancel).ConfigureAwait(false))
        {
            string tag = BatchTags.Tidy(batch, typed);
            bool mayBe = stroke < 0 ? BatchTags.NumberOf(batch, tag) is not null : NameKey.Same(batch.Name, name);
            if (!mayBe)
            {
                continue;
            }

            Wound wound = await ReadAsync(batch, cancel).ConfigureAwait(false);
            bool isWound = wound.Tags.Contains(tag);
            if (isWound || BatchTags.NumberOf(batch, tag) <= BatchNumber.Wanted(batch, wound.Events))
            {
                NameMatch match = string.Equals(tag, typed, StringComparison.OrdinalIgnoreCase) ? NameMatch.Name : NameMatch.Number;
                found.Add((await CoilAsync(batch, tag, wound, cancel).ConfigureAwait(false) with { Match = match }, isWound));
            }
        }

        return [.. found.Where(one => one.Wound || found.All(other => !other.Wound)).Select(one => one.Hit)];
    }

    /// <summary>A winder, and the pieces whose coils were wound on it.</summary>
    public async Task<IReadOnlyList<TraceHit>> WindersAsync(string asked, CancellationToken cancel)
    {
        if (
            (await records.Machines.AllAsync(cancel).ConfigureAwait(false)).LastOrDefault(one => NameKey.Same(one.Name, asked))
            is not { } winder
        )
        {
            return [];
        }

        List<(BatchRecord Batch, string[] Tags)> coils = [];
        foreach (BatchRecord batch in await records.Batches.AllAsync(cancel).ConfigureAwait(false))
        {
            Wound wound = await ReadAsync(batch, cancel).ConfigureAwait(false);
            coils.Add(
                (
                    batch,
                    [
                        .. wound.Tags.Where(tag =>
                            NameKey.Same(
                                wound.Events.OfType<WinderEvent>().LastOrDefault(one => one.Tag == tag && one.Machine.Length > 0)?.Machine
                                    ?? batch.Machine,
                                winder.Name
                            )
                        ),
                    ]
                )
            );
        }

        int count = coils.Sum(one => one.Tags.Length);
        string words = string.Create(
            CultureInfo.InvariantCulture,
            $"a winder, {count:#,##0} {(count == 1 ? "coil" : "coils")} wound on it"
        );
        return
        [
            new TraceHit("winder", winder.Name, words, await PiecesAsync(coils, cancel).ConfigureAwait(false))
            {
                Loose = await LooseAsync(coils, cancel).ConfigureAwait(false),
            },
        ];
    }

    private async Task<TraceHit> CoilAsync(BatchRecord batch, string tag, Wound wound, CancellationToken cancel)
    {
        DateTimeOffset? read = wound.InForce.Where(reading => reading.Tag == tag).Select(reading => (DateTimeOffset?)reading.TimeUtc).Min();
        string when = read is { } time ? "read " + await DayAsync(time, cancel).ConfigureAwait(false) : "not wound yet";
        string words = $"a {batch.CoilName} coil of batch {batch.Name}, {await RecipeAsync(batch, cancel).ConfigureAwait(false)}, {when}";
        IReadOnlyList<TracedState> pieces = read is null ? [] : await PiecesAsync([(batch, [tag])], cancel).ConfigureAwait(false);
        return new TraceHit("coil", BatchTags.CodeOf(batch, tag), words, pieces)
        {
            Id = batch.Id,
            Tag = tag,
            Loose = read is null ? [] : await LooseAsync([(batch, [tag])], cancel).ConfigureAwait(false),
        };
    }

    private async Task<Wound> ReadAsync(BatchRecord batch, CancellationToken cancel)
    {
        IReadOnlyList<ReadingRecord> inForce = ReadingChain.InForce(
            await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false)
        );
        IReadOnlyList<BatchEvent> events = BatchEventLog.Holding(await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false));
        return new Wound(inForce, [.. inForce.Select(reading => reading.Tag).Distinct(StringComparer.Ordinal)], events);
    }

    /// <summary>Those of these coils that stand in no piece, in order of batch and tag.</summary>
    public async Task<IReadOnlyList<LooseCoil>> LooseAsync(
        IReadOnlyList<(BatchRecord Batch, string[] Tags)> coils,
        CancellationToken cancel
    )
    {
        IReadOnlySet<(Guid, string)> used = await records
            .Pieces.CoilsInPiecesAsync([.. coils.Where(one => one.Tags.Length > 0).Select(one => one.Batch.Id)], cancel)
            .ConfigureAwait(false);
        List<LooseCoil> loose = [];
        foreach ((BatchRecord batch, string[] tags) in coils)
        {
            string[] left = [.. tags.Where(tag => !used.Contains((batch.Id, tag)))];
            if (left.Length > 0)
            {
                string recipe = await RecipeAsync(batch, cancel).ConfigureAwait(false);
                loose.AddRange(left.Order(StringComparer.Ordinal).Select(tag => new LooseCoil(BatchTags.CodeOf(batch, tag), recipe)));
            }
        }

        return loose;
    }

    /// <summary>Pieces that hold or held any of these coils, with where they are.</summary>
    public async Task<IReadOnlyList<TracedState>> PiecesAsync(
        IReadOnlyList<(BatchRecord Batch, string[] Tags)> coils,
        CancellationToken cancel
    )
    {
        List<PieceRecord> pieces = [];
        Dictionary<Guid, string> through = [];
        foreach ((BatchRecord batch, string[] tags) in coils.Where(one => one.Tags.Length > 0))
        {
            IReadOnlyList<PieceRecord> found = await records
                .Pieces.WithAsync(new PieceQuery(Coils: (batch.Id, tags)), cancel)
                .ConfigureAwait(false);
            foreach (
                PiecePartRecord part in (
                    await records.Pieces.PartsAsync([.. found.Select(piece => piece.Id)], cancel).ConfigureAwait(false)
                ).Where(part => part.BatchId == batch.Id && tags.Contains(part.Tag))
            )
            {
                string code = BatchTags.CodeOf(batch, part.Tag);
                through[part.PieceId] = through.TryGetValue(part.PieceId, out string? others) ? $"{others}, {code}" : code;
            }

            pieces.AddRange(found);
        }

        return await TraceService
            .StatesAsync(
                records,
                shelf,
                [.. pieces.DistinctBy(piece => piece.Id)],
                piece => through.GetValueOrDefault(piece.Id, ""),
                cancel
            )
            .ConfigureAwait(false);
    }

    private async Task<string> RecipeAsync(BatchRecord batch, CancellationToken cancel) =>
        await records.Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false) is { } revision
            ? $"{revision.RecipeName} {revision.Letter}"
            : "a recipe that is not there";

    private async Task<string> DayAsync(DateTimeOffset utc, CancellationToken cancel) =>
        TimeZoneInfo
            .ConvertTime(utc, (await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone)
            .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Coils of a batch as they stand: readings and events in force, and tags in order of entry.</summary>
    private sealed record Wound(IReadOnlyList<ReadingRecord> InForce, string[] Tags, IReadOnlyList<BatchEvent> Events);
}
