using BenchmarkDotNet.Attributes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Benchmarks;

/// <summary>
/// A whole quick prediction with its intervals, against the accurate engine's on the same recipe; the ratio comes from the same run.
/// </summary>
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class PredictBenchmarks
{
    private PickupModel _model = null!;
    private LoadCircuit _load = null!;

    [Params("harbour-bridge", "breakwater-twin")]
    public string Recipe { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        string demo = Path.Combine(Repository.Root(), "demo");
        _model = RecipeModelBuilder.ToModel(RecipeReader.Read(File.ReadAllText(Path.Combine(demo, "recipes", Recipe + ".json"))).Value!);
        _load = LoadReader.Read(File.ReadAllText(Path.Combine(demo, "loads", "player.json"))).Value!;
    }

    [Benchmark(Baseline = true)]
    public Prediction Accurate() => Forecaster.Predict(_model, _load, new ForecastOptions { Engine = new AccurateFieldEngine() });

    [Benchmark]
    public Prediction Quick() => Forecaster.Predict(_model, _load);
}
