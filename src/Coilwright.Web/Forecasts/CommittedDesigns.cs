using System.Collections.Concurrent;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics.Fields;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Forecasts;

/// <summary>Saved revisions solved by the accurate engine in the background, so that sliders may use the fast one put right.</summary>
internal sealed class CommittedDesigns
{
    private const int Most = 64;
    private readonly ConcurrentDictionary<string, Task<FieldCalibration?>> _known = new(StringComparer.Ordinal);

    /// <summary>Begins to solve a saved recipe, unless it is known or being solved.</summary>
    public void Prepare(string recipeJson)
    {
        if (_known.Count >= Most && !_known.ContainsKey(recipeJson))
        {
            _known.Clear();
        }

        _ = _known.GetOrAdd(recipeJson, json => Task.Run(() => Solve(json)));
    }

    /// <summary>The correction at a saved recipe; null while it is not there.</summary>
    public FieldCalibration? Find(string recipeJson) =>
        _known.TryGetValue(recipeJson, out Task<FieldCalibration?>? task) && task.IsCompletedSuccessfully ? task.GetAwaiter().GetResult() : null;

    private static FieldCalibration? Solve(string json) =>
        RecipeReader.Read(json).Value is { } recipe ? EngineCalibration.Of(RecipeModelBuilder.ToModel(recipe)) : null;
}
