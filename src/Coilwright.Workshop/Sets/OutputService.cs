using System.Collections.Concurrent;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Sets;

/// <summary>What pieces give and how they are poled: the forecast of their revision, made once, and what was measured of each.</summary>
/// <remarks>
/// Of one recipe output goes with turns, inductance with their square and ohms with turns of one wire [derived; the rest of the winding
/// taken as alike].
/// So turns noted at the winder scale it as they are, a measured inductance by its root, ohms as they are, in this order of trust: thick
/// and thin wire
/// moves ohms and no output. Magnets stand as they were charged: the forecast is made anew with all of them at that share of what the
/// recipe states, since
/// strings saturate; a charge told as a field is a share by the field that the recipe's full charge is forecast to give at that distance
/// over the poles.
/// </remarks>
public sealed class OutputService(CoilService store)
{
    private const double SameFrequencyPart = 0.02,
        ForecastHz = 1000;

    private readonly ConcurrentDictionary<(Guid, int), RecipeFacts> _recipes = new();

    /// <summary>These pieces as candidates for a set, in their order.</summary>
    public async Task<IReadOnlyList<SetPiece>> OfAsync(IReadOnlyList<PieceSnapshot> lives, CancellationToken cancel)
    {
        IReadOnlyList<CoilAtHand> coils = await store
            .WoundAsync(lives.SelectMany(life => life.PartsIn).Select(part => part.BatchId).OfType<Guid>(), cancel)
            .ConfigureAwait(false);
        Dictionary<(Guid, string), CoilAtHand> byTag = coils.ToDictionary(coil => (coil.Batch.Id, coil.Coil.Tag));
        List<SetPiece> pieces = [];
        foreach (PieceSnapshot life in lives)
        {
            RecipeFacts facts = _recipes.GetOrAdd((life.Piece.RecipeId, life.Piece.RevisionNumber), _ => RecipeFacts.Of(life.Recipe));
            CoilAtHand[] own =
            [
                .. life
                    .PartsIn.Where(part => part.BatchId is not null)
                    .Select(part => byTag.GetValueOrDefault((part.BatchId!.Value, part.Tag)))
                    .OfType<CoilAtHand>(),
            ];
            pieces.Add(new SetPiece(life, Charged(life, Output(life, own, facts), facts), facts.Coils));
        }

        return pieces;
    }

    private static PieceOutput Charged(PieceSnapshot life, PieceOutput full, RecipeFacts facts)
    {
        if (MagnetCharge.Of(life)?.Level is not { IsFull: false } level || facts.ShareOf(level) is not { } share)
        {
            return full;
        }

        return new PieceOutput(full.VoltsPerSpeed * facts.OutputAt(share) / facts.Output, $"{full.How}; magnets at {level.Words}");
    }

    private static PieceOutput Output(PieceSnapshot life, CoilAtHand[] coils, RecipeFacts facts)
    {
        if (coils.Length == life.Recipe.Coils.Count && coils.All(coil => coil.TurnsNoted))
        {
            return new PieceOutput(
                facts.Output * coils.Sum(coil => coil.Turns) / facts.Turns,
                "forecast, by the turns noted at the winder"
            );
        }

        IReadOnlyList<PieceReadingRecord> tested = life.History.Test is { } test ? life.ReadingsOf(test) : [];
        if (
            tested.LastOrDefault(reading =>
                reading is { Quantity: QuantityKey.Inductance, Si: > 0 }
                && Math.Abs((reading.AtHz ?? 0) - ForecastHz) <= SameFrequencyPart * ForecastHz
            ) is
            { Si: { } henry }
        )
        {
            return new PieceOutput(facts.Output * Math.Sqrt(henry / facts.InductanceH), "forecast, by the root of the measured inductance");
        }

        PieceReadingRecord? read = tested.LastOrDefault(reading => reading is { Quantity: QuantityKey.DcResistance, Si: > 0 });
        bool addUp =
            coils.Length == life.Recipe.Coils.Count
            && life.Recipe.Connection != Connection.Parallel
            && coils.All(coil => coil.OhmAt20C is > 0);
        double? ofCoils = addUp ? coils.Sum(coil => coil.OhmAt20C!.Value) : null;
        double? ohm = read is null ? ofCoils : read.Comparable();
        return ohm is { } measured
            ? new PieceOutput(facts.Output * measured / facts.Ohm, "estimated from resistance (rough: wire thickness matters too)")
            : new PieceOutput(facts.Output, "forecast of its recipe alone: nothing measured");
    }

    /// <summary>What all pieces of a revision share.</summary>
    private sealed record RecipeFacts(
        PickupModel Model,
        double Output,
        double InductanceH,
        double Ohm,
        double Turns,
        IReadOnlyList<CoilSigns> Coils
    )
    {
        private readonly ConcurrentDictionary<double, double> _outputs = new(),
            _fields = new();

        /// <summary>The share of the recipe's magnets that a level stands for; null when it cannot be told.</summary>
        public double? ShareOf(MagnetLevel level) =>
            level.Share
            ?? (level.FieldT is { } tesla && FieldAt(level.JigM ?? MagnetLevel.UsualJigM) is > 0 and { } full ? tesla / full : null);

        /// <summary>Output with all magnets at a share of what the recipe states.</summary>
        public double OutputAt(double share) =>
            _outputs.GetOrAdd(share, _ =>
                NamedOutput(Forecaster.Predict(MagnetStrength.Scaled(Model, share), load: null, new ForecastOptions { JigM = null }))
            );

        /// <summary>Mean field over the poles at a distance, T, by the recipe's magnets.</summary>
        private double FieldAt(double jigM) =>
            _fields.GetOrAdd(jigM, _ =>
                Forecaster
                    .Predict(Model, load: null, new ForecastOptions { JigM = jigM })
                    .Pickup.Poles.Select(pole => Math.Abs(pole.Field.Value))
                    .DefaultIfEmpty()
                    .Average()
            );

        public static RecipeFacts Of(Recipe recipe)
        {
            PickupModel model = RecipeModelBuilder.ToModel(recipe);
            Prediction prediction = Forecaster.Predict(model, load: null, new ForecastOptions { JigM = null });
            double output = NamedOutput(prediction);
            IReadOnlyList<CoilSigns> signs = RecipePhase.Of(recipe).Coils;
            return new RecipeFacts(
                model,
                output,
                prediction.Pickup.Inductance.Value,
                prediction.Pickup.DcResistance.Value,
                recipe.Coils.Sum(coil => coil.Winding.Turns),
                [.. signs.Select((coil, at) => coil with { TurnsArea = Math.Abs(prediction.Coils[at].HumAreaM2) })]
            );
        }

        private static double NamedOutput(Prediction prediction) =>
            prediction.Pickup.Strings.Average(one => Math.Abs(one.Sensitivity.Value));
    }
}
