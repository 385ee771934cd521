using Coilwright.Application.Jobs;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>Answers questions asked backwards, each as a job in the background; kept, since pinning asks the same question again.</summary>
public sealed class SolveService(TimeProvider time, SolveRecipe solve) : IDisposable
{
    /// <summary>Most questions kept, those under way among them.</summary>
    private const int MostKept = 12;

    /// <summary>Searches at one time; a core is left for the other pages.</summary>
    private const int MostAtOnce = 2;

    private static readonly int s_threads = Math.Max(1, (Environment.ProcessorCount - 1) / MostAtOnce);

    /// <summary>A search whose page nobody has looked at for so long gives its place to the next.</summary>
    private static readonly TimeSpan s_left = TimeSpan.FromMinutes(1);

    private readonly SemaphoreSlim _places = new(Math.Clamp(Environment.ProcessorCount - 1, 1, MostAtOnce));
    private readonly Dictionary<(string Json, string Objective, string Vary), BackgroundJob<ReadOutcome<Solutions>>> _jobs = [];
    private readonly Lock _gate = new();

    /// <summary>The job of a question, begun if need be; null when too many are under way.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="want">What is wanted, a line each.</param>
    /// <param name="vary">What may change.</param>
    public BackgroundJob<ReadOutcome<Solutions>>? Ask(Recipe recipe, string want, string vary)
    {
        lock (_gate)
        {
            DateTimeOffset nowUtc = time.GetUtcNow();
            (string, string, string) key = (recipe.ForecastKey, want, vary);
            if (_jobs.TryGetValue(key, out BackgroundJob<ReadOutcome<Solutions>>? known))
            {
                known.AskedUtc = nowUtc;
                return known;
            }

            if (_jobs.Count >= MostKept && !Forget())
            {
                return null;
            }

            foreach (BackgroundJob<ReadOutcome<Solutions>> left in _jobs.Values.Where(job => nowUtc - job.AskedUtc > s_left))
            {
                left.Stop();
            }

            return _jobs[key] = new BackgroundJob<ReadOutcome<Solutions>>(
                _places,
                nowUtc,
                (progress, cancel) => Answer(recipe, want, vary, progress, cancel),
                () => NothingFound
            );
        }
    }

    /// <summary>Stops every search.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            foreach (BackgroundJob<ReadOutcome<Solutions>> job in _jobs.Values)
            {
                job.Dispose();
            }

            _jobs.Clear();
        }

        _places.Dispose();
    }

    /// <summary>Stops a job; what it found stays.</summary>
    public void Stop(Recipe recipe, string want, string vary)
    {
        lock (_gate)
        {
            _jobs.GetValueOrDefault((recipe.ForecastKey, want, vary))?.Stop();
        }
    }

    /// <summary>Forgets a job, so that the question is answered anew.</summary>
    public void Forget(Recipe recipe, string want, string vary)
    {
        lock (_gate)
        {
            if (_jobs.Remove((recipe.ForecastKey, want, vary), out BackgroundJob<ReadOutcome<Solutions>>? job))
            {
                job.Dispose();
            }
        }
    }

    /// <summary>Makes room: what is answered goes, what is under way stays.</summary>
    private bool Forget()
    {
        (string, string, string)[] answered = [.. _jobs.Where(job => job.Value.Answer.IsCompleted).Select(job => job.Key)];
        foreach ((string, string, string) key in answered)
        {
            _jobs.Remove(key, out BackgroundJob<ReadOutcome<Solutions>>? job);
            job!.Dispose();
        }

        return answered.Length > 0;
    }

    private static ReadOutcome<Solutions> NothingFound =>
        new(null, [new Problem("want", "it was stopped before anything was found", null, "search again, with less that may change")]);

    private ReadOutcome<Solutions> Answer(Recipe recipe, string want, string vary, IProgress<double> progress, CancellationToken cancel)
    {
        string[] wants = want.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        SolveRequest asked = new(wants, vary, UsualLoad.Player.Load) { Threads = s_threads };
        return solve.Solve(recipe, asked, progress, cancel);
    }
}
