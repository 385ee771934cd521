using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Benchmarks;

/// <summary>
/// A quick prediction whose lengths are exact, against the same with the intervals of ten lengths and more: while turns move, and on a
/// geometry that was never asked before.
/// </summary>
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class SizesBenchmarks
{
    private PickupModel _model = null!;
    private LoadCircuit _load = null!;
    private int _asked;

    [Params("harbour-bridge", "breakwater-twin")]
    public string Recipe { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        string demo = Path.Combine(Repository.Root(), "demo");
        string json = File.ReadAllText(Path.Combine(demo, "recipes", Recipe + ".json"))
            .Replace("\"endRadius\": \"3.1 mm\"", "\"endRadius\": \"2.9 mm\"", StringComparison.Ordinal); // a tenth length
        _model = RecipeModelBuilder.ToModel(RecipeReader.Read(json).Value!);
        _load = LoadReader.Read(File.ReadAllText(Path.Combine(demo, "loads", "player.json"))).Value!;
    }

    [Benchmark(Baseline = true)]
    public Prediction Exact() => Forecaster.Predict(Turned(_model) with { Sizes = [] }, _load);

    [Benchmark]
    public Prediction WhileTurnsMove() => Forecaster.Predict(Turned(_model), _load);

    [Benchmark]
    public Prediction OnNewGeometry()
    {
        double moreM = 1e-9 * ++_asked;
        return Forecaster.Predict(
            _model with
            {
                Coils =
                [
                    .. _model.Coils.Select(coil =>
                        coil with
                        {
                            Bobbin = coil.Bobbin with { WindingHeightM = coil.Bobbin.WindingHeightM + moreM },
                        }
                    ),
                ],
            },
            _load
        );
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
