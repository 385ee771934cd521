using System.Globalization;
using Coilwright.Analysis.Pairing;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Pieces;

/// <summary>The wound coils at hand, and which go together.</summary>
public sealed class CoilService(IShopRecords records, WindingService winding)
{
    /// <summary>What coils can be paired by.</summary>
    public static readonly IReadOnlyList<string> PairedBy = [QuantityKey.DcResistance, QuantityKey.Inductance, QuantityKey.Turns];

    /// <summary>
    /// Coils of a recipe, any revision, that stand in no piece, in order of winding; rejected ones are left out, held ones too unless asked
    /// for.
    /// </summary>
    public async Task<IReadOnlyList<CoilAtHand>> AtHandAsync(Guid recipeId, bool held, CancellationToken cancel)
    {
        BatchRecord[] batches =
        [
            .. (await records.Batches.AllAsync(cancel).ConfigureAwait(false)).Where(batch => batch.RecipeId == recipeId),
        ];
        IReadOnlySet<(Guid, string)> used = await records
            .Pieces.CoilsInPiecesAsync([.. batches.Select(batch => batch.Id)], cancel)
            .ConfigureAwait(false);
        List<CoilAtHand> coils = [];
        foreach (BatchRecord batch in batches)
        {
            coils.AddRange(
                (await OfBatchAsync(batch, cancel).ConfigureAwait(false)).Where(coil =>
                    !used.Contains((batch.Id, coil.Coil.Tag))
                    && (coil.Coil.Verdict.Kind == VerdictKind.Pass || (held && coil.Coil.Verdict.Kind == VerdictKind.Hold))
                )
            );
        }

        return coils;
    }

    /// <summary>One coil by "batch/tag", or by "batch/number"; null when there is none that was read.</summary>
    public async Task<CoilAtHand?> FindAsync(string code, CancellationToken cancel)
    {
        string[] parts = code.Trim().Split('/', 2);
        BatchRecord? batch =
            parts.Length == 2
                ? (await records.Batches.AllAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one =>
                    string.Equals(one.Name, parts[0].Trim(), StringComparison.OrdinalIgnoreCase)
                )
                : null;
        if (batch is null)
        {
            return null;
        }

        string tag = int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? BatchTags.Of(batch, number)
            : BatchTags.Tidy(batch, parts[1]);
        return (await OfBatchAsync(batch, cancel).ConfigureAwait(false)).FirstOrDefault(coil => coil.Coil.Tag == tag);
    }

    /// <summary>The best way to put the coils at hand together.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="coils">Coils at hand.</param>
    /// <param name="by">One of <see cref="PairedBy"/>.</param>
    /// <param name="offset">By how much the second coil is meant to exceed the first, a part of it.</param>
    /// <returns>Pieces in order, and the coils that find no partner.</returns>
    public static (IReadOnlyList<ProposedPiece> Pieces, IReadOnlyList<CoilAtHand> Left) Propose(
        Recipe recipe,
        IReadOnlyList<CoilAtHand> coils,
        string by,
        double offset = 0
    )
    {
        if (recipe.Coils.Count == 1)
        {
            return ([.. coils.Select(coil => new ProposedPiece([coil], null, null))], []);
        }

        string[] places = [.. recipe.Coils.Select(coil => coil.Name)];
        if (places.Length != 2)
        {
            return InOrder(places, coils);
        }

        CoilAtHand[] two =
        [
            .. coils.Where(coil => places.Contains(coil.Batch.CoilName)).OrderBy(coil => Array.IndexOf(places, coil.Batch.CoilName)),
        ];
        if (two.Select(coil => coil.Batch.CoilName).Distinct(StringComparer.Ordinal).Count() < 2)
        {
            return ([], coils);
        }

        PairingAnswer answer = CoilPairing.Best(
            [.. two.Select(coil => new PairingCoil(coil.Code, coil.Batch.CoilName, [Value(coil, by)]))],
            [new PairingPreference(OffsetFraction: offset)]
        );
        return (
            [
                .. answer.Pairs.Select(pair => new ProposedPiece(
                    [two[pair.A], two[pair.B]],
                    pair.Difference,
                    HumResidue.Level(two[pair.A].Turns, two[pair.B].Turns)
                )),
            ],
            [.. answer.Left.Select(at => two[at])]
        );
    }

    /// <summary>More than two coils are not searched: in order of ohms, place by place.</summary>
    private static (IReadOnlyList<ProposedPiece>, IReadOnlyList<CoilAtHand>) InOrder(string[] places, IReadOnlyList<CoilAtHand> coils)
    {
        CoilAtHand[][] shelves =
        [
            .. places.Select(place =>
                coils.Where(coil => coil.Batch.CoilName == place).OrderBy(coil => coil.OhmAt20C ?? double.MaxValue).ToArray()
            ),
        ];
        int whole = shelves.Min(shelf => shelf.Length);
        return (
            [.. Enumerable.Range(0, whole).Select(at => new ProposedPiece([.. shelves.Select(shelf => shelf[at])], null, null))],
            [.. shelves.SelectMany(shelf => shelf.Skip(whole))]
        );
    }

    private static double Value(CoilAtHand coil, string by) =>
        by switch
        {
            QuantityKey.Turns => coil.Turns,
            QuantityKey.Inductance => coil.InductanceH ?? double.NaN,
            _ => coil.OhmAt20C ?? double.NaN,
        };

    /// <summary>Wound coils of these batches, whether they stand in a piece or not.</summary>
    internal async Task<IReadOnlyList<CoilAtHand>> WoundAsync(IEnumerable<Guid> batches, CancellationToken cancel)
    {
        List<CoilAtHand> coils = [];
        foreach (Guid id in batches.Distinct())
        {
            coils.AddRange(
                await records.Batches.FindAsync(id, cancel).ConfigureAwait(false) is { } batch
                    ? await OfBatchAsync(batch, cancel).ConfigureAwait(false)
                    : []
            );
        }

        return coils;
    }

    /// <summary>The coils of a batch; none of one that cannot be shown, which stands marked in the list of batches.</summary>
    private async Task<IReadOnlyList<CoilAtHand>> OfBatchAsync(BatchRecord batch, CancellationToken cancel) =>
        (await RecordStatus.ReadAsync("Batch " + batch.Name, () => CoilsOfAsync(batch, cancel)).ConfigureAwait(false)).Value ?? [];

    private async Task<IReadOnlyList<CoilAtHand>> CoilsOfAsync(BatchRecord batch, CancellationToken cancel)
    {
        if (
            await winding.StatusAsync(batch.Id, cancel).ConfigureAwait(false) is not { } standing
            || await records.Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel).ConfigureAwait(false)
                is not { } revision
        )
        {
            return [];
        }

        BatchDossier dossier = await winding.Dossiers.OfAsync(batch, cancel).ConfigureAwait(false);
        Recipe recipe = ReleasedRecipe.Of(revision);
        double turns = recipe.Coils[ReleasedRecipe.PlaceOf(recipe, revision, batch.CoilName)].Winding.Turns;
        return
        [
            .. standing.Coils.Select(coil => new CoilAtHand(batch, coil, Noted(coil) ?? dossier.TurnsOf(coil.Tag) ?? turns)
            {
                TurnsNoted = Noted(coil) is not null || dossier.History.EndedLow.ContainsKey(coil.Tag),
            }),
        ];
    }

    private static double? Noted(CoilDossier coil) => coil.InForce.LastOrDefault(reading => reading.Turns is > 0)?.Turns;
}
