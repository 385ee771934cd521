using Coilwright.Analysis.Spread;
using Coilwright.Application.Jobs;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Application.Forecasts;

/// <summary>A person asks how a run will scatter, and waits for the answer with other pages going on.</summary>
public sealed class SpreadService(TimeProvider time, SpreadRecipe spread) : IDisposable
{
    /// <summary>Most answers kept.</summary>
    private const int MostKept = 8;

    private readonly SemaphoreSlim _places = new(1);
    private readonly Dictionary<string, BackgroundJob<RunSpread?>> _jobs = [];
    private readonly Lock _gate = new();

    /// <summary>The job of a recipe, begun if need be; its answer is null when it was stopped before anything was drawn.</summary>
    public BackgroundJob<RunSpread?> Ask(Recipe recipe)
    {
        lock (_gate)
        {
            if (_jobs.TryGetValue(recipe.ForecastKey, out BackgroundJob<RunSpread?>? known))
            {
                return known;
            }

            if (_jobs.Count >= MostKept)
            {
                Clear();
            }

            return _jobs[recipe.ForecastKey] = new BackgroundJob<RunSpread?>(
                _places,
                time.GetUtcNow(),
                (progress, cancel) =>
                    spread.Draw(recipe, UsualLoad.Player.Load, SpreadRecipe.UsualSamples, seed: 1, byTime: false, progress, cancel),
                () => null
            );
        }
    }

    /// <summary>Stops a job; what it drew stays.</summary>
    public void Stop(Recipe recipe)
    {
        lock (_gate)
        {
            _jobs.GetValueOrDefault(recipe.ForecastKey)?.Stop();
        }
    }

    /// <summary>Forgets a job, so that the run is drawn anew.</summary>
    public void Forget(Recipe recipe)
    {
        lock (_gate)
        {
            if (_jobs.Remove(recipe.ForecastKey, out BackgroundJob<RunSpread?>? job))
            {
                job.Dispose();
            }
        }
    }

    /// <summary>Stops all of them.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            Clear();
        }

        _places.Dispose();
    }

    private void Clear()
    {
        foreach (BackgroundJob<RunSpread?> job in _jobs.Values)
        {
            job.Dispose();
        }

        _jobs.Clear();
    }
}
