namespace Coilwright.Application.Jobs;

/// <summary>One piece of long work in the background: how far it is, and its answer.</summary>
/// <typeparam name="T">What it answers.</typeparam>
public sealed class BackgroundJob<T> : IDisposable, IProgress<double>
{
#pragma warning disable CA2213 // disposed when the work has ended, which is after Dispose: the work still looks at it
    private readonly CancellationTokenSource _stop = new();
#pragma warning restore CA2213
    private readonly DateTimeOffset _begunUtc;

    /// <summary>Begins it; it waits until a place is free.</summary>
    /// <param name="places">Places for such work at one time.</param>
    /// <param name="nowUtc">Now.</param>
    /// <param name="work">The work; it tells how far it is and stops when it is asked to.</param>
    /// <param name="nothing">What it answers when it is stopped before there is anything to tell.</param>
    public BackgroundJob(SemaphoreSlim places, DateTimeOffset nowUtc, Func<IProgress<double>, CancellationToken, T> work, Func<T> nothing)
    {
        (_begunUtc, AskedUtc) = (nowUtc, nowUtc);
        Answer = RunAsync(places, work, nothing);
    }

    /// <summary>Part that is done, 0 to 1.</summary>
    public double Done { get; private set; }

    /// <summary>When its page was asked for last.</summary>
    public DateTimeOffset AskedUtc { get; set; }

    /// <summary>True while others take all places.</summary>
    public bool Waits { get; private set; } = true;

    /// <summary>The answer when it is there: all of it, or what was found when it was stopped.</summary>
    public Task<T> Answer { get; }

    /// <summary>How far it is, for the page.</summary>
    public JobProgress Progress(DateTimeOffset nowUtc) => new(Waits, Done, nowUtc - _begunUtc);

    public void Report(double value) => Done = value;

    /// <summary>Ends it early; the answer is then what was found.</summary>
    public void Stop() => _stop.Cancel();

    public void Dispose()
    {
        _stop.Cancel();
        _ = Answer.ContinueWith(_ => _stop.Dispose(), TaskScheduler.Default);
    }

    private async Task<T> RunAsync(SemaphoreSlim places, Func<IProgress<double>, CancellationToken, T> work, Func<T> nothing)
    {
        try
        {
            await places.WaitAsync(_stop.Token);
        }
        catch (OperationCanceledException)
        {
            return nothing();
        }

        try
        {
            Waits = false;
            return await Task.Factory.StartNew(
                () => work(this, _stop.Token),
                CancellationToken.None,
                TaskCreationOptions.LongRunning,
                TaskScheduler.Default
            );
        }
        catch (OperationCanceledException)
        {
            return nothing();
        }
        finally
        {
            places.Release();
        }
    }
}
