using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Tracing;

/// <summary>From a serial to everything in the piece, and from a spool, lot, basket, ink or customer to every piece.</summary>
public sealed class TraceService(IShopRecords records, PieceService shelf, BatchDossiers dossiers)
{
    private static readonly string[] s_kinds =
    [
        "piece",
        "batch",
        "coil",
        "spool",
        "spool-lot",
        "winder",
        "magnet-lot",
        "part-lot",
        "basket",
        "bath-lot",
        "ink",
        "customer",
        "recipe",
        "set",
    ];

    private readonly BatchTrace _batches = new(records, shelf);

    /// <summary>Place of a kind among those found.</summary>
    public static int PlaceOf(string kind) => Array.IndexOf(s_kinds, kind);

    /// <summary>A piece with everything; null when there is none of this serial or id.</summary>
    public async Task<TracedPiece?> PieceAsync(string serial, CancellationToken cancel)
    {
        if (await shelf.FindAsync(serial, cancel).ConfigureAwait(false) is not { } life)
        {
            return null;
        }

        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        IReadOnlyList<CustomerRecord> customers = await records.Customers.AllAsync(cancel).ConfigureAwait(false);
        string state = life.State(
            await shelf.NowUtcAsync(cancel).ConfigureAwait(false),
            rules.Zone,
            await shelf.CustomerWordsAsync(cancel).ConfigureAwait(false)
        );
        List<TracedCoil> coils = [];
        IReadOnlyList<SpoolRecord> spools = await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false);
        foreach (PiecePartRecord part in life.Parts.Where(part => part.BatchId is not null))
        {
            coils.Add(await CoilAsync(part, life.IsOut(part), spools, cancel).ConfigureAwait(false));
        }

        StepBegun[] begun = [.. life.History.InForce.OfType<StepBegun>()],
            everBegun = [.. life.History.All.OfType<StepBegun>()];
        IReadOnlyList<BasketRecord> allBaskets = everBegun.All(one => one.BasketId is null)
            ? []
            : await records.Steps.BasketsAsync(int.MaxValue, cancel).ConfigureAwait(false);
        IReadOnlyList<InkMixRecord> allMixes = everBegun.All(one => one.MixId is null)
            ? []
            : await records.Steps.InkMixesAsync(int.MaxValue, cancel, alsoTakenBack: true).ConfigureAwait(false);
        return new TracedPiece(
            life,
            state,
            coils,
            [.. allBaskets.Where(basket => begun.Any(one => one.BasketId == basket.Id))],
            [.. allMixes.Where(mix => begun.Any(one => one.MixId == mix.Id))],
            [.. life.History.InForce.OfType<Shipped>().Select(one => customers.First(customer => customer.Id == one.CustomerId)).Distinct()]
        )
        {
            Zone = rules.Zone,
            Names = allBaskets
                .Select(one => KeyValuePair.Create(one.Id, one.Label))
                .Concat(allMixes.Select(one => KeyValuePair.Create(one.Id, one.Label)))
                .Concat(customers.Select(one => KeyValuePair.Create(one.Id, one.Words)))
                .ToDictionary(),
            Set = SetMembership.Of(life) is { } place
                ? PieceSet
                    .Among(
                        await shelf
                            .LivesAsync(
                                await records.Pieces.WithAsync(new PieceQuery(SetId: place.SetId), cancel).ConfigureAwait(false),
                                cancel
                            )
                            .ConfigureAwait(false)
                    )
                    .First(set => set.Id == place.SetId)
                : null,
        };
    }

    /// <summary>
    /// Everything of a name: serial, batch, coil, spool, winder, lot, basket, ink, customer or recipe. Several things may share a name; all
    /// are told.
    /// </summary>
    public async Task<IReadOnlyList<TraceHit>> FindAsync(string name, CancellationToken cancel)
    {
        string asked = name.Trim();
        if (asked.Length == 0)
        {
            return [];
        }

        return
        [
            .. await PiecesAsync(asked, cancel).ConfigureAwait(false),
            .. await _batches.BatchesAsync(asked, cancel).ConfigureAwait(false),
            .. await _batches.CoilsAsync(asked, cancel).ConfigureAwait(false),
            .. await SpoolsAsync(asked, cancel).ConfigureAwait(false),
            .. await _batches.WindersAsync(asked, cancel).ConfigureAwait(false),
            .. await LotsAsync(asked, cancel).ConfigureAwait(false),
            .. await StepsAsync(asked, cancel).ConfigureAwait(false),
            .. await CustomersAsync(asked, cancel).ConfigureAwait(false),
            .. await RecipesAsync(asked, cancel).ConfigureAwait(false),
            .. await SetsAsync(asked, cancel).ConfigureAwait(false),
        ];
    }

    private async Task<IReadOnlyList<TraceHit>> SetsAsync(string asked, CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> pieces = await records.Pieces.WithAsync(new PieceQuery(SetName: asked), cancel).ConfigureAwait(false);
        Dictionary<Guid, string> places = (await shelf.LivesAsync(pieces, cancel).ConfigureAwait(false)).ToDictionary(
            life => life.Piece.Id,
            life => SetMembership.Of(life) is { } stands && Same(stands.Name, asked) ? stands.Place : "left it"
        );
        return pieces.Count == 0
            ? []
            :
            [
                new TraceHit(
                    "set",
                    asked,
                    "a set of matched pieces",
                    await StatesAsync(pieces, piece => places[piece.Id], cancel).ConfigureAwait(false)
                ),
            ];
    }

    private async Task<IReadOnlyList<TraceHit>> PiecesAsync(string asked, CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> found = await records.Pieces.FindAsync([asked], cancel).ConfigureAwait(false);
        return found.Count == 0
            ? []
            : [new TraceHit("piece", found[0].Serial, "a piece", await StatesAsync(found, _ => "", cancel).ConfigureAwait(false))];
    }

    private async Task<IReadOnlyList<TraceHit>> SpoolsAsync(string asked, CancellationToken cancel)
    {
        IReadOnlyList<SpoolRecord> spools = await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false);
        List<TraceHit> hits = [];
        foreach (SpoolRecord spool in spools.Where(spool => Same(spool.Label, asked) || (spool.Lot.Length > 0 && Same(spool.Lot, asked))))
        {
            List<(BatchRecord Batch, string[] Tags)> wound = [];
            foreach (BatchRecord batch in await records.Batches.WithSpoolAsync(spool.Label, cancel).ConfigureAwait(false))
            {
                Dictionary<string, string> spoolOf = await SpoolOfCoilsAsync(batch, cancel).ConfigureAwait(false);
                wound.Add((batch, [.. spoolOf.Where(pair => Same(pair.Value, spool.Label)).Select(pair => pair.Key)]));
            }

            hits.Add(
                new TraceHit(
                    Same(spool.Label, asked) ? "spool" : "spool-lot",
                    spool.Label,
                    $"{spool.Gauge} {KeyLabels.Of(spool.Insulation)}, "
                        + $"{KeyLabels.Of(spool.Build)}{(spool.Lot.Length > 0 ? $", lot {spool.Lot}" : "")}",
                    await _batches.PiecesAsync(wound, cancel).ConfigureAwait(false)
                )
                {
                    Loose = await _batches.LooseAsync(wound, cancel).ConfigureAwait(false),
                }
            );
        }

        return hits;
    }

    private async Task<IReadOnlyList<TraceHit>> LotsAsync(string asked, CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> pieces = await records.Pieces.WithAsync(new PieceQuery(Lot: asked), cancel).ConfigureAwait(false);
        if (pieces.Count == 0)
        {
            return [];
        }

        ILookup<Guid, PiecePartRecord> parts = (
            await records.Pieces.PartsAsync([.. pieces.Select(piece => piece.Id)], cancel).ConfigureAwait(false)
        )
            .Where(part => Same(part.Lot, asked))
            .ToLookup(part => part.PieceId);
        bool magnets = parts.All(own => own.All(part => part.Kind == PartKind.Magnets));
        return
        [
            new TraceHit(
                magnets ? "magnet-lot" : "part-lot",
                asked,
                magnets ? "a lot of magnets" : "a lot of parts",
                await StatesAsync(pieces, piece => string.Join(", ", parts[piece.Id].Select(part => part.Place)), cancel)
                    .ConfigureAwait(false)
            ),
        ];
    }

    private async Task<IReadOnlyList<TraceHit>> StepsAsync(string asked, CancellationToken cancel)
    {
        List<TraceHit> hits = [];
        foreach (BasketRecord basket in await records.Steps.FindBasketsAsync(asked, cancel).ConfigureAwait(false))
        {
            hits.Add(
                new TraceHit(
                    Same(basket.Label, asked) ? "basket" : "bath-lot",
                    basket.Label,
                    $"a basket in {basket.Kind} of lot {basket.Lot}",
                    await StatesAsync(
                            await records.Pieces.WithAsync(new PieceQuery(BasketId: basket.Id), cancel).ConfigureAwait(false),
                            _ => "potting",
                            cancel
                        )
                        .ConfigureAwait(false)
                )
            );
        }

        foreach (InkMixRecord mix in await records.Steps.FindInkMixesAsync(asked, cancel).ConfigureAwait(false))
        {
            hits.Add(
                new TraceHit(
                    "ink",
                    mix.Label,
                    $"a mix of ink, lots {mix.Lots}",
                    await StatesAsync(
                            await records.Pieces.WithAsync(new PieceQuery(MixId: mix.Id), cancel).ConfigureAwait(false),
                            _ => "marking",
                            cancel
                        )
                        .ConfigureAwait(false)
                )
            );
        }

        return hits;
    }

    private async Task<IReadOnlyList<TraceHit>> CustomersAsync(string asked, CancellationToken cancel)
    {
        List<TraceHit> hits = [];
        foreach (
            CustomerRecord customer in (await records.Customers.AllAsync(cancel).ConfigureAwait(false)).Where(one =>
                Same(one.Reference, asked) || (one.Name.Length > 0 && Same(one.Name, asked))
            )
        )
        {
            hits.Add(
                new TraceHit(
                    "customer",
                    customer.Reference,
                    customer.Words,
                    await StatesAsync(
                            await records.Pieces.WithAsync(new PieceQuery(CustomerId: customer.Id), cancel).ConfigureAwait(false),
                            _ => "",
                            cancel
                        )
                        .ConfigureAwait(false)
                )
            );
        }

        return hits;
    }

    private async Task<IReadOnlyList<TraceHit>> RecipesAsync(string asked, CancellationToken cancel)
    {
        List<TraceHit> hits = [];
        foreach (
            RevisionRecord revision in (await records.Recipes.NewestAsync(cancel).ConfigureAwait(false)).Where(one =>
                Same(one.RecipeName, asked)
            )
        )
        {
            hits.Add(
                new TraceHit(
                    "recipe",
                    revision.RecipeName,
                    $"a recipe, newest revision {revision.Letter}",
                    await StatesAsync(
                            await records.Pieces.WithAsync(new PieceQuery(RecipeId: revision.RecipeId), cancel).ConfigureAwait(false),
                            _ => "",
                            cancel
                        )
                        .ConfigureAwait(false)
                )
                {
                    Id = revision.RecipeId,
                }
            );
        }

        return hits;
    }

    private Task<IReadOnlyList<TracedState>> StatesAsync(
        IReadOnlyList<PieceRecord> pieces,
        Func<PieceRecord, string> through,
        CancellationToken cancel
    ) => StatesAsync(records, shelf, pieces, through, cancel);

    internal static async Task<IReadOnlyList<TracedState>> StatesAsync(
        IShopRecords records,
        PieceService shelf,
        IReadOnlyList<PieceRecord> pieces,
        Func<PieceRecord, string> through,
        CancellationToken cancel
    )
    {
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        Dictionary<Guid, CustomerRecord> customers = (await records.Customers.AllAsync(cancel).ConfigureAwait(false)).ToDictionary(
            customer => customer.Id
        );
        return
        [
            .. (
                await shelf
                    .LivesAsync([.. pieces.OrderBy(piece => piece.Serial, StringComparer.OrdinalIgnoreCase)], cancel)
                    .ConfigureAwait(false)
            ).Select(life => new TracedState(
                life.Piece.Serial,
                $"{life.Recipe.Name} {life.Revision.Letter}",
                life.State(nowUtc, rules.Zone, id => customers[id].Words),
                life.History.InForce.OfType<Shipped>().LastOrDefault() is { } left ? customers[left.CustomerId].Reference : "",
                through(life.Piece)
            )),
        ];
    }

    private async Task<TracedCoil> CoilAsync(PiecePartRecord part, bool isOut, IReadOnlyList<SpoolRecord> spools, CancellationToken cancel)
    {
        BatchRecord batch = await records.Batches.FindAsync(part.BatchId!.Value, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException("A coil of a batch that is not there.");
        BatchDossier dossier = await dossiers.OfAsync(batch, cancel).ConfigureAwait(false);
        CoilOrigin origin = dossier.OriginOf(part.Tag);
        return new TracedCoil(
            batch,
            part.Tag,
            part.Place,
            isOut,
            origin.Spool,
            spools.FirstOrDefault(one => Same(one.Label, origin.Spool))?.Lot ?? "",
            origin.Machine,
            dossier.PeopleOf(part.Tag),
            dossier.InForce(part.Tag)
        )
        {
            SpoolDoubt = origin.Doubt,
        };
    }

    private async Task<Dictionary<string, string>> SpoolOfCoilsAsync(BatchRecord batch, CancellationToken cancel)
    {
        BatchDossier dossier = await dossiers.OfAsync(batch, cancel).ConfigureAwait(false);
        return dossier.Tags.ToDictionary(tag => tag, tag => dossier.OriginOf(tag).Spool, StringComparer.Ordinal);
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
