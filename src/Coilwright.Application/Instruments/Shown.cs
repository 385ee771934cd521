using System.Globalization;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>What one instrument shows, and the line that asks it while somebody looks.</summary>
/// <param name="time">The clock.</param>
internal sealed class Shown(TimeProvider time)
{
    private readonly Lock _gate = new();
    private readonly Newest<ShownValue> _newest = new(time, ShownValue.Nothing);
    private CancellationTokenSource? _stop;
    private Task _work = Task.CompletedTask;
    private ShopInstrument? _asked;
    private long _lookedAt,
        _shownAt;

    /// <summary>Asks the instrument from now on, unless it is asked already.</summary>
    public void Keep(ShopInstrument instrument, Func<CancellationToken, IAsyncEnumerable<MeterSight>> watch)
    {
        lock (_gate)
        {
            _lookedAt = time.GetTimestamp();
            if (_asked == instrument && !_work.IsCompleted)
            {
                return;
            }

            _stop?.Cancel();
            _asked = instrument;
            _newest.Change(_ => ShownValue.Nothing); // what was shown before may be another coil's
            CancellationTokenSource stop = new();
            _stop = stop;
            _work = Task.Run(() => AskAsync(watch(stop.Token), stop), CancellationToken.None);
        }
    }

    /// <summary>Something was shown.</summary>
    public void Show(MeterSight sight)
    {
        Interlocked.Exchange(ref _shownAt, time.GetTimestamp());
        _newest.Change(before => Told(sight, before));
    }

    /// <summary>What is shown once it differs from what was seen, or after a while unchanged.</summary>
    public async Task<ShownValue> NextAsync(long seen, TimeSpan patience, CancellationToken cancel)
    {
        _newest.Change(before => IsOld(before) ? ShownValue.Silent : before);
        (long number, ShownValue value) = await _newest.NextAsync(seen, patience, cancel).ConfigureAwait(false);
        return value with { Number = number };
    }

    /// <summary>A value that nobody confirms any more says nothing of what is clipped on now.</summary>
    private bool IsOld(ShownValue value) =>
        value.Kind is "live" or "standing" or "off"
        && value != ShownValue.Nothing
        && time.GetElapsedTime(Interlocked.Read(ref _shownAt)) > MeterBench.Confirmed;

    /// <summary>Ends the line.</summary>
    public async Task StopAsync()
    {
        CancellationTokenSource? stop;
        Task work;
        lock (_gate)
        {
            (stop, work) = (_stop, _work);
        }

        if (stop is not null)
        {
            await stop.CancelAsync().ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing); // one that ended just now is gone already
        }

        await work.ConfigureAwait(false);
    }

    private async Task AskAsync(IAsyncEnumerable<MeterSight> sights, CancellationTokenSource stop)
    {
        try
        {
            await foreach (MeterSight sight in sights.ConfigureAwait(false))
            {
                Show(sight);
                if (time.GetElapsedTime(Interlocked.Read(ref _lookedAt)) > MeterBench.Linger)
                {
                    return;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // Nobody looks any more, or the instrument was entered anew.
        }
        finally
        {
            lock (_gate)
            {
                _stop = _stop == stop ? null : _stop;
            }

            stop.Dispose();
        }
    }

    private static ShownValue Told(MeterSight sight, ShownValue before) =>
        sight switch
        {
            MeterSight.Standing one => new(0, "standing", one.Answer.Words, TypedOf(one.Answer), one.Id, one.Answer.Raw),
            MeterSight.Live when before.Kind == "standing" => before,
            MeterSight.Live one => new(0, "live", one.Answer.Words, "", null, one.Answer.Raw),
            MeterSight.Off one => new(0, "off", "over range: nothing clipped on, or an open coil", "", null, one.Answer.Raw),
            MeterSight.Trouble one => new(0, "trouble", one.Fault.Message, "", null, one.Fault.Raw),
            _ => before,
        };

    /// <summary>The value as a person would type it, in its own unit: "6182.1 Ω".</summary>
    private static string TypedOf(MeterAnswer answer) => string.Create(CultureInfo.InvariantCulture, $"{answer.Value:R} {answer.Unit}");
}
