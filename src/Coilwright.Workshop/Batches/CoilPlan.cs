using System.Collections.Concurrent;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Workshop.Batches;

/// <summary>What one coil of a released revision takes and will read: the plan a batch is wound to.</summary>
public sealed class CoilPlan
{
    private static readonly ConcurrentDictionary<
        (Guid RecipeId, int Number, string Json, string Coil, KnownParts Known),
        CoilPlan
    > s_known = new();

    private const int MostKept = 50;

    /// <summary>Forecasts at other turns and on measured wire; kept, since the winder's page asks again and again.</summary>
    private readonly ConcurrentDictionary<(double Turns, Estimate? OhmPerM), (PickupModel Model, Prediction Prediction)> _wound = new();
    private readonly Recipe _recipe;
    private readonly PickupModel _model;
    private readonly Prediction _prediction;
    private readonly int _index;

    private CoilPlan(Recipe recipe, int index)
    {
        _recipe = recipe;
        _index = index;
        _model = RecipeModelBuilder.ToModel(recipe);
        _prediction = Forecaster.Predict(_model, load: null);
        SetUp = On(null, WindingSetUp.UsualRoomC).Coils[index];
    }

    /// <summary>The coil on no machine in particular.</summary>
    public CoilSetUp SetUp { get; }

    /// <summary>The forecast of the whole pickup, unloaded.</summary>
    public Prediction Forecast => _prediction;

    /// <summary>The whole pickup as modelled.</summary>
    public PickupModel Pickup => _model;

    /// <summary>The coil as modelled, for pictures.</summary>
    public CoilModel Model => _model.Coils[_index];

    /// <summary>Place of the coil in the recipe.</summary>
    public int Index => _index;

    /// <summary>The plan of a batch's coil; made once, since a released revision never changes.</summary>
    /// <param name="revision">The revision.</param>
    /// <param name="coilName">Which of its coils.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <exception cref="UnreadableRecordException">The revision cannot be read any more, or has no such coil.</exception>
    public static CoilPlan Of(RevisionRecord revision, string coilName, KnownParts parts) =>
        s_known.GetOrAdd((revision.RecipeId, revision.Number, revision.Json, coilName, parts), _ => Make(revision, coilName, parts));

    /// <summary>The set-up on a winder, for every coil of the recipe.</summary>
    public WindingSetUp On(Machine? machine, double roomC, string name = "") =>
        WindingSetUp.For(_recipe, _model, _prediction, name, roomC, machine);

    /// <summary>
    /// The set-up of this coil alone, as a batch winds it: its turns and its spool's wire where they are not the recipe's.
    /// </summary>
    /// <param name="machine">The winder's data, when it is known.</param>
    /// <param name="roomC">Room temperature, °C.</param>
    /// <param name="name">Name of the winder, or empty.</param>
    /// <param name="turns">Real turns to wind.</param>
    /// <param name="ohmPerM">Resistance of the spool at 20 °C, Ω/m; null takes the recipe's wire.</param>
    public WindingSetUp ForBatch(Machine? machine, double roomC, string name, double turns, Estimate? ohmPerM)
    {
        (PickupModel model, Prediction prediction) =
            turns.Equals(SetUp.Turns) && ohmPerM is null ? (_model, _prediction) : Wound(turns, ohmPerM);
        WindingSetUp whole = WindingSetUp.For(_recipe, model, prediction, name, roomC, machine);
        return whole with { Coils = [whole.Coils[_index]] };
    }

    /// <summary>Wire in the coil's first turns, m.</summary>
    /// <param name="turns">Real turns, 0 or more.</param>
    /// <remarks>
    /// The build grows evenly with the turns, so that n turns take n (P + πbn/N): P is the innermost turn's length, b the whole build.
    /// Derived; equals the forecast's length at the recipe's turns.
    /// </remarks>
    public double WireM(double turns)
    {
        double share = turns / SetUp.Turns,
            meanM = SetUp.WireLength.Value / SetUp.Turns,
            growthM = SetUp.OutermostTurnM - meanM;
        return turns * (meanM - growthM + growthM * share);
    }

    /// <summary>Turns whose wire is so long; the inverse of <see cref="WireM"/>.</summary>
    public double TurnsOf(double wireM)
    {
        double meanM = SetUp.WireLength.Value / SetUp.Turns,
            growthM = SetUp.OutermostTurnM - meanM,
            innerM = meanM - growthM;
        double perTurnM = growthM / SetUp.Turns;
        return 2 * wireM / (innerM + Math.Sqrt(innerM * innerM + 4 * perTurnM * wireM));
    }

    private (PickupModel Model, Prediction Prediction) Wound(double turns, Estimate? ohmPerM)
    {
        if (_wound.Count > MostKept)
        {
            _wound.Clear();
        }

        return _wound.GetOrAdd((turns, ohmPerM), key =>
        {
            CoilModel own = Model;
            CoilModel coil = own with
            {
                Winding = own.Winding with { Turns = key.Turns },
                Wire = key.OhmPerM is { } measured ? own.Wire with { MeasuredOhmPerM = measured } : own.Wire,
            };
            PickupModel model = _model with { Coils = [.. _model.Coils.Select((one, index) => index == _index ? coil : one)] };
            return (model, Forecaster.Predict(model, load: null));
        });
    }

    private static CoilPlan Make(RevisionRecord revision, string coilName, KnownParts parts)
    {
        Recipe recipe = parts.Fill(ReleasedRecipe.Of(revision));
        return new CoilPlan(recipe, ReleasedRecipe.PlaceOf(recipe, revision, coilName));
    }
}
