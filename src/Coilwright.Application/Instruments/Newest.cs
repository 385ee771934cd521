namespace Coilwright.Application.Instruments;

/// <summary>The newest of something that changes, for those who wait for the next.</summary>
/// <param name="time">The clock.</param>
/// <param name="first">What stands before anything came.</param>
internal sealed class Newest<T>(TimeProvider time, T first)
{
    private readonly Lock _gate = new();
    private long _number;
    private T _value = first;
    private TaskCompletionSource _changed = NewSignal();

    /// <summary>Takes in what is new; whoever waits is told.</summary>
    /// <param name="next">What stands now, made of what stood before; the same again tells nobody.</param>
    public void Change(Func<T, T> next)
    {
        TaskCompletionSource changed;
        lock (_gate)
        {
            T value = next(_value);
            if (EqualityComparer<T>.Default.Equals(value, _value))
            {
                return;
            }

            _value = value;
            _number++;
            changed = _changed;
            _changed = NewSignal();
        }

        changed.TrySetResult();
    }

    /// <summary>What stands once it differs from what was seen, or after a while unchanged.</summary>
    /// <param name="seen">Number of what was seen last; zero for nothing.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<(long Number, T Value)> NextAsync(long seen, TimeSpan patience, CancellationToken cancel)
    {
        Task changed;
        lock (_gate)
        {
            if (_number != seen)
            {
                return (_number, _value);
            }

            changed = _changed.Task;
        }

        await Task.WhenAny(changed, Task.Delay(patience, time, cancel)).ConfigureAwait(false);
        cancel.ThrowIfCancellationRequested();
        lock (_gate)
        {
            return (_number, _value);
        }
    }

    private static TaskCompletionSource NewSignal() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
