using Coilwright.Analysis.Spread;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Forecasts;

/// <summary>A person asks how a production run will scatter.</summary>
public sealed class SpreadRecipe
{
    /// <summary>Pieces drawn unless said.</summary>
    public const int UsualSamples = 20_000;

    /// <summary>Draws a run.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="load">What hangs on the pickup.</param>
    /// <param name="samples">Pieces to draw.</param>
    /// <param name="seed">The same seed gives the same answer.</param>
    /// <param name="byTime">The winder stops by the clock instead of by the count.</param>
    /// <param name="cancel">Stops it; what was drawn by then is the answer.</param>
    /// <param name="progress">Told the part of the work that is done, 0 to 1.</param>
    public RunSpread Draw(
        Recipe recipe,
        LoadCircuit load,
        int samples,
        int seed,
        bool byTime,
        IProgress<double>? progress,
        CancellationToken cancel
    ) =>
        RunForecaster.Spread(
            RecipeModelBuilder.ToModel(recipe),
            load,
            RecipeTargets.ForRun(recipe),
            samples,
            seed,
            byTime,
            progress,
            cancel
        );
}
