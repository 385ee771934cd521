using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Learning;

/// <summary>What a set changes in the forecasts of a shop's recipes: without a named spool, and on the spool wound from last.</summary>
internal sealed class LearningMoves(IShopRecords records)
{
    /// <summary>The moves of every recipe whose newest released revision is forecast otherwise.</summary>
    public async Task<IReadOnlyList<LearntMove>> ReadAsync(
        LearningBook book,
        LearntSet set,
        DateTimeOffset nowUtc,
        CancellationToken cancel
    )
    {
        KnownParts plain = await KnownParts.ReadAsync(records.Recipes, records.Rules, cancel).ConfigureAwait(false);
        ILookup<Guid, BatchRecord> batches = (await records.Batches.AllAsync(cancel).ConfigureAwait(false)).ToLookup(one => one.RecipeId);
        List<LearntMove> moves = [];
        foreach (RevisionRecord newest in await records.Recipes.NewestAsync(cancel).ConfigureAwait(false))
        {
            IReadOnlyList<RevisionRecord> all = await records.Recipes.RevisionsAsync(newest.RecipeId, cancel).ConfigureAwait(false);
            RevisionRecord? released = all.Where(one => one.State == RevisionState.Released).MaxBy(one => one.Number);
            if (released is null || RecipeReader.Read(released.Json).Value is not { } recipe)
            {
                continue;
            }

            string[] spools = ["", batches[newest.RecipeId].LastOrDefault()?.Spool ?? ""];
            foreach (string spool in spools.Distinct(StringComparer.OrdinalIgnoreCase))
            {
                RecipeLearning learning = new(
                    set,
                    book,
                    nowUtc,
                    await LearntParts.SpoolAsync(records, spool, cancel).ConfigureAwait(false)
                );
                moves.AddRange(Moves(recipe, released.Letter, spool, plain, plain.With(learning), cancel));
            }
        }

        return moves;
    }

    private static IEnumerable<LearntMove> Moves(
        Recipe recipe,
        string letter,
        string spool,
        KnownParts plain,
        KnownParts learnt,
        CancellationToken cancel
    )
    {
        Physics.PickupModel with = RecipeModelBuilder.ToModel(learnt.Fill(recipe));
        if (with.Coils.All(coil => coil.Learnt is null))
        {
            yield break;
        }

        ForecastOptions options = new() { Strings = false };
        Prediction before = Forecaster.Predict(RecipeModelBuilder.ToModel(plain.Fill(recipe)), null, options, cancel),
            after = Forecaster.Predict(with, null, options, cancel);
        foreach ((CoilForecast was, CoilForecast now) in before.Coils.Zip(after.Coils))
        {
            string coil = recipe.Coils.Count == 1 ? "" : was.Name;
            foreach (
                (string quantity, Figure one, Figure other) in (IEnumerable<(string, Figure, Figure)>)
                    [
                        (QuantityKey.DcResistance, was.DcResistance, now.DcResistance),
                        (QuantityKey.Inductance, was.Inductance, now.Inductance),
                    ]
            )
            {
                if (other.Estimate.Basis == Physics.Basis.Learnt)
                {
                    yield return new LearntMove(recipe.Name, letter, coil, quantity, spool, one.Estimate, other.Estimate);
                }
            }
        }
    }
}
