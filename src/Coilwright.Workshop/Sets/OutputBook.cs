using System.Collections.Concurrent;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Fields;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Sets;

/// <summary>What pieces give and how they are poled: the forecast of their revision, made once, and what was measured of each.</summary>
/// <remarks>
/// Of one recipe output goes with turns, inductance with their square and ohms with turns of one wire [derived; the rest of the winding taken as alike].
/// So turns noted at the winder scale it as they are, a measured inductance by its root, ohms as they are, in this order of trust: thick and thin wire
/// moves ohms and no output. Magnets are taken as the recipe states them.
/// </remarks>
public sealed class OutputBook(CoilStore store)
{
    private const double SameFrequencyPart = 0.02, ForecastHz = 1000;

    private readonly ConcurrentDictionary<(Guid, int), RecipeFacts> _recipes = new();

    /// <summary>These pieces as candidates for a set, in their order.</summary>
    public async Task<IReadOnlyList<SetPiece>> OfAsync(IReadOnlyList<PieceLife> lives, CancellationToken cancel)
    {
        IReadOnlyList<CoilAtHand> coils = await store.WoundAsync(lives.SelectMany(life => life.PartsIn).Select(part => part.BatchId).OfType<Guid>(), cancel).ConfigureAwait(false);
        Dictionary<(Guid, string), CoilAtHand> byTag = coils.ToDictionary(coil => (coil.Batch.Id, coil.Coil.Tag));
        List<SetPiece> pieces = [];
        foreach (PieceLife life in lives)
        {
            RecipeFacts facts = _recipes.GetOrAdd((life.Piece.RecipeId, life.Piece.RevisionNumber), _ => RecipeFacts.Of(life.Recipe));
            CoilAtHand[] own = [.. life.PartsIn.Where(part => part.BatchId is not null).Select(part => byTag.GetValueOrDefault((part.BatchId!.Value, part.Tag))).OfType<CoilAtHand>()];
            pieces.Add(new SetPiece(life, Output(life, own, facts), facts.Coils));
        }

        return pieces;
    }

    private static PieceOutput Output(PieceLife life, CoilAtHand[] coils, RecipeFacts facts)
    {
        if (coils.Length == life.Recipe.Coils.Count && coils.All(coil => coil.TurnsNoted))
        {
            return new PieceOutput(facts.Output * coils.Sum(coil => coil.Turns) / facts.Turns, "forecast, by the turns noted at the winder");
        }

        IReadOnlyList<PieceReadingRecord> tested = life.History.Test is { } test ? life.ReadingsOf(test) : [];
        if (tested.LastOrDefault(reading => reading is { Quantity: "inductance", Si: > 0 } && Math.Abs((reading.AtHz ?? 0) - ForecastHz) <= SameFrequencyPart * ForecastHz) is { Si: { } henry })
        {
            return new PieceOutput(facts.Output * Math.Sqrt(henry / facts.InductanceH), "forecast, by the root of the measured inductance");
        }

        double? ohm = tested.LastOrDefault(reading => reading is { Quantity: "dcResistance", Si: > 0 }) is { } read ? TestBench.Comparable(read)
            : coils.Length == life.Recipe.Coils.Count && life.Recipe.Connection != Connection.Parallel && coils.All(coil => coil.OhmAt20C is > 0) ? coils.Sum(coil => coil.OhmAt20C!.Value) : null;
        return ohm is { } measured ? new PieceOutput(facts.Output * measured / facts.Ohm, "estimated from resistance (rough: wire thickness matters too)") : new PieceOutput(facts.Output, "forecast of its recipe alone: nothing measured");
    }

    /// <summary>What all pieces of a revision share.</summary>
    private sealed record RecipeFacts(double Output, double InductanceH, double Ohm, double Turns, IReadOnlyList<CoilSigns> Coils)
    {
        public static RecipeFacts Of(Recipe recipe)
        {
            PickupModel model = RecipeModelBuilder.ToModel(recipe);
            Prediction prediction = Forecaster.Predict(model, load: null, new ForecastOptions { JigM = null });
            double output = NamedOutput(prediction);
            IReadOnlyList<CoilSigns> signs = RecipePhase.Of(recipe).Coils;
            return new RecipeFacts(output, prediction.Pickup.Inductance.Value, prediction.Pickup.DcResistance.Value, recipe.Coils.Sum(coil => coil.Winding.Turns),
                [.. signs.Select((coil, at) => coil with { TurnsArea = recipe.Coils[at].Winding.Turns * AirInductance.MeanAreaM2(model.Coils[at].Bobbin, prediction.Coils[at].Build.Value) })]);
        }

        private static double NamedOutput(Prediction prediction) => prediction.Pickup.Strings.Average(one => Math.Abs(one.Sensitivity.Value));
    }
}
