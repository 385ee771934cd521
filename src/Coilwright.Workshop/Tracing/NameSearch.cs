using Coilwright.Physics;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tracing;

/// <summary>Finds anything of a shop by its name or a part of it, and gives near names when there is none.</summary>
public sealed class NameSearch(IShopRecords records, TraceService trace)
{
    private const int MostNames = 20,
        MostNear = 5;

    /// <summary>What has the name; else what has it as a part of its name; else names near it.</summary>
    public async Task<SearchAnswer> FindAsync(string typed, CancellationToken cancel)
    {
        string asked = typed.Trim();
        IReadOnlyList<TraceHit> exact = await trace.FindAsync(asked, cancel).ConfigureAwait(false);
        if (exact.Count > 0 || asked.Length == 0)
        {
            return new SearchAnswer(asked, exact, [], 0);
        }

        IReadOnlyList<string> names = await NamesAsync(cancel).ConfigureAwait(false);
        string key = NameKey.Of(asked);
        string[] parts =
        [
            .. names.Where(name => NameKey.Of(name).Contains(key, StringComparison.Ordinal)).Distinct(StringComparer.OrdinalIgnoreCase),
        ];
        if (parts.Length == 0)
        {
            return new SearchAnswer(asked, [], NearNames.Find(asked, names, MostNear, onlyAlike: true), 0);
        }

        List<TraceHit> hits = [];
        foreach (string name in parts.Take(MostNames))
        {
            hits.AddRange(
                (await trace.FindAsync(name, cancel).ConfigureAwait(false))
                    .Where(hit => hit.Match == NameMatch.Name)
                    .Select(hit => hit with { Match = NameMatch.Part })
            );
        }

        return new SearchAnswer(
            asked,
            [.. hits.DistinctBy(hit => (hit.Kind, hit.Name, hit.Id, hit.Tag)).OrderBy(hit => TraceService.PlaceOf(hit.Kind))],
            [],
            Math.Max(0, parts.Length - MostNames)
        );
    }

    /// <summary>Names of everything that can be found by a part of them.</summary>
    private async Task<IReadOnlyList<string>> NamesAsync(CancellationToken cancel)
    {
        List<string> names = [.. (await records.Recipes.NewestAsync(cancel).ConfigureAwait(false)).Select(one => one.RecipeName)];
        IReadOnlyList<BatchRecord> batches = await records.Batches.AllAsync(cancel).ConfigureAwait(false);
        names.AddRange(batches.Select(batch => batch.Name));
        names.AddRange(
            (await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false)).SelectMany(spool => new[] { spool.Label, spool.Lot })
        );
        names.AddRange((await records.Machines.AllAsync(cancel).ConfigureAwait(false)).Select(machine => machine.Name));
        foreach (CustomerRecord customer in await records.Customers.AllAsync(cancel).ConfigureAwait(false))
        {
            names.AddRange([customer.Reference, customer.Name]);
        }

        names.AddRange(
            (await records.Steps.BasketsAsync(int.MaxValue, cancel).ConfigureAwait(false)).SelectMany(basket =>
                new[] { basket.Label, basket.Lot }
            )
        );
        names.AddRange((await records.Steps.InkMixesAsync(int.MaxValue, cancel).ConfigureAwait(false)).Select(mix => mix.Label));
        names.AddRange(await records.Pieces.SerialsLikeAsync("", cancel).ConfigureAwait(false));
        foreach (BatchRecord batch in batches)
        {
            names.AddRange(
                ReadingChain
                    .InForce(await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false))
                    .Select(reading => BatchTags.CodeOf(batch, reading.Tag))
                    .Distinct(StringComparer.Ordinal)
            );
        }

        return [.. names.Where(name => name.Length > 0)];
    }
}
