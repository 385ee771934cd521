using System.Collections.Concurrent;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>What an instrument shows just now, as a page is told it.</summary>
/// <param name="Number">Counts up with everything that is shown.</param>
/// <param name="Kind">"live", "standing", "off" or "trouble".</param>
/// <param name="Words">The value, or what is wrong, for people.</param>
/// <param name="Typed">The value as coil entry takes it; empty unless it stands still.</param>
/// <param name="Id">Names a standing value for good: recorded twice, it is recorded once. Null unless it stands still.</param>
/// <param name="Raw">The line as it came.</param>
public sealed record ShownValue(long Number, string Kind, string Words, string Typed, Guid? Id, string Raw)
{
    /// <summary>Before anything was shown.</summary>
    public static readonly ShownValue Nothing = new(0, "off", "waiting for the instrument", "", null, "");

    /// <summary>A bench computer that passed its readings on and does so no more.</summary>
    public static readonly ShownValue Silent = new(0, "trouble", "nothing comes from the instrument any more: type the coil", "", null, "");
}

/// <summary>
/// The shop's instruments as pages see them: each is asked only while somebody looks, by one line however many look, and a standing value
/// has one name for all of them.
/// </summary>
/// <param name="watch">Asks an instrument that hangs here.</param>
/// <param name="time">The clock.</param>
public sealed class MeterBench(WatchMeter watch, TimeProvider time) : IAsyncDisposable
{
    /// <summary>How long an instrument is asked on after the last page has looked.</summary>
    public static readonly TimeSpan Linger = TimeSpan.FromSeconds(20);

    /// <summary>A value counts for so long after it was last seen: a slow instrument sends every few seconds. Our choice.</summary>
    public static readonly TimeSpan Confirmed = TimeSpan.FromSeconds(10);

    private readonly ConcurrentDictionary<string, Shown> _shown = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>What an instrument shows once it differs from what was seen, or after a while unchanged.</summary>
    /// <param name="instrument">Which; one that hangs here is asked from now on.</param>
    /// <param name="seen"><see cref="ShownValue.Number"/> of what was seen last; zero for nothing.</param>
    /// <param name="patience">How long to wait for something new.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ShownValue> NextAsync(ShopInstrument instrument, long seen, TimeSpan patience, CancellationToken cancel)
    {
        Shown shown = Of(instrument.Name);
        if (instrument.Address is { } address)
        {
            shown.Keep(instrument, stop => watch.WatchAsync(instrument.Profile, address, stop));
        }

        return await shown.NextAsync(seen, patience, cancel).ConfigureAwait(false);
    }

    /// <summary>A bench computer passes on what its instrument shows.</summary>
    /// <param name="name">The instrument's name in the shop.</param>
    /// <param name="sight">What it shows.</param>
    public void Pass(string name, MeterSight sight) => Of(name).Show(sight);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (Shown shown in _shown.Values)
        {
            await shown.StopAsync().ConfigureAwait(false);
        }
    }

    private Shown Of(string name) => _shown.GetOrAdd(name, _ => new Shown(time));
}
