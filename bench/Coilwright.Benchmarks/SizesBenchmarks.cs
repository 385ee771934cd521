using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Benchmarks;

/// <summary>
/// A quick prediction whose lengths are exact, against the same with every length known within common practice's half-width (nine lengths
/// of a single coil to twenty-seven of two coils with a magnet and a keeper): while turns move, and on a geometry that was never asked
/// before. The column of ratios is the price.
/// </summary>
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class SizesBenchmarks
{
    private PickupModel _model = null!;
    private LoadCircuit _load = null!;
    private int _asked;

    [Params("harbour-bridge", "keel-blade", "lantern-seven", "sandbar-wide", "tideway-bass", "breakwater-twin")]
    public string Name { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        string demo = Path.Combine(Repository.Root(), "demo");
        Recipe recipe = RecipeReader.Read(File.ReadAllText(Path.Combine(demo, "recipes", Name + ".json"))).Value!;
        _model = RecipeModelBuilder.ToModel(
            recipe with
            {
                SizeRules = new SizeRules { CommonM = 0.2e-3, ClearanceM = 0.3e-3 },
            }
        );
        _load = LoadReader.Read(File.ReadAllText(Path.Combine(demo, "loads", "player.json"))).Value!;
    }

    [Benchmark(Baseline = true)]
    public Prediction Exact() => Forecaster.Predict(Grown(_model) with { Sizes = [] }, _load);

    [Benchmark]
    public Prediction WhileTurnsMove() => Forecaster.Predict(Turned(_model), _load);

    [Benchmark]
    public Prediction OnNewGeometry() => Forecaster.Predict(Grown(_model), _load);

    /// <summary>A window that was never asked before.</summary>
    private PickupModel Grown(PickupModel model)
    {
        double moreM = 1e-9 * ++_asked;
        return model with
        {
            Coils =
            [
                .. model.Coils.Select(coil =>
                    coil with
                    {
                        Bobbin = coil.Bobbin with { WindingHeightM = coil.Bobbin.WindingHeightM + moreM },
                    }
                ),
            ],
        };
    }

    /// <summary>A few turns more or fewer, as under a slider.</summary>
    private PickupModel Turned(PickupModel model) =>
        model with
        {
            Coils =
            [
                .. model.Coils.Select(coil =>
                {
                    WindingModel winding = coil.Winding;
                    return coil with { Winding = winding with { Turns = winding.Turns + ++_asked % 50 } };
                }),
            ],
        };
}
