using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>One search in the background: how far it is, and its answer.</summary>
public sealed class SolveJob : IDisposable, IProgress<double>
{
#pragma warning disable CA2213 // disposed when the search has ended, which is after Dispose: the search still looks at it
    private readonly CancellationTokenSource _stop = new();
#pragma warning restore CA2213
    private readonly DateTimeOffset _begunUtc;

    /// <summary>Begins it; it waits until a place is free.</summary>
    /// <param name="places">Places for searches at one time.</param>
    /// <param name="nowUtc">Now.</param>
    /// <param name="search">The search; it tells how far it is and stops when it is asked to.</param>
    public SolveJob(SemaphoreSlim places, DateTimeOffset nowUtc, Func<IProgress<double>, CancellationToken, ReadOutcome<Solutions>> search)
    {
        (_begunUtc, AskedUtc) = (nowUtc, nowUtc);
        Answer = RunAsync(places, search);
    }

    /// <summary>Part that is done, 0 to 1.</summary>
    public double Done { get; private set; }

    /// <summary>When its page was asked for last.</summary>
    public DateTimeOffset AskedUtc { get; set; }

    /// <summary>True while others take all places.</summary>
    public bool Waits { get; private set; } = true;

    /// <summary>The answer when it is there: all of it, or what was found when it was stopped.</summary>
    public Task<ReadOutcome<Solutions>> Answer { get; }

    /// <summary>How far it is, for the page.</summary>
    public SolveProgress Progress(DateTimeOffset nowUtc) => new(Waits, Done, nowUtc - _begunUtc);

    public void Report(double value) => Done = value;

    /// <summary>Ends it early; the answer is then what was found.</summary>
    public void Stop() => _stop.Cancel();

    public void Dispose()
    {
        _stop.Cancel();
        _ = Answer.ContinueWith(_ => _stop.Dispose(), TaskScheduler.Default);
    }

    private async Task<ReadOutcome<Solutions>> RunAsync(
        SemaphoreSlim places,
        Func<IProgress<double>, CancellationToken, ReadOutcome<Solutions>> search
    )
    {
        try
        {
            await places.WaitAsync(_stop.Token);
        }
        catch (OperationCanceledException)
        {
            return NothingFound;
        }

        try
        {
            Waits = false;
            return await Task.Factory.StartNew(
                () => search(this, _stop.Token),
                CancellationToken.None,
                TaskCreationOptions.LongRunning,
                TaskScheduler.Default
            );
        }
        catch (OperationCanceledException)
        {
            return NothingFound;
        }
        finally
        {
            places.Release();
        }
    }

    private static ReadOutcome<Solutions> NothingFound =>
        new(null, [new Problem("want", "it was stopped before anything was found", null, "search again, with less that may change")]);
}
