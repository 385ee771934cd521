using System.Collections.Concurrent;

namespace Coilwright.Application.Instruments;

/// <summary>Where the counter of a batch's winder stands, as it was passed on.</summary>
/// <param name="Number">Counts up with everything that is passed on; zero before.</param>
/// <param name="Counter">What the counter shows.</param>
/// <param name="Turns">Turns on the bobbin, with the counter's correction.</param>
/// <param name="ToStop">Turns to come; null without a stop.</param>
/// <param name="Rpm">Turns a minute.</param>
/// <param name="Note">"", "soon", "stop", "back", "ahead", "ended" or "lost".</param>
/// <param name="AgeS">How long ago it was passed on, s.</param>
public sealed record ShownCount(long Number, double Counter, double Turns, double? ToStop, double Rpm, string Note, double AgeS)
{
    /// <summary>Before anything was passed on.</summary>
    public static readonly ShownCount Nothing = new(0, 0, 0, null, 0, "", 0);
}

/// <summary>The counters that run just now, by their batches. A reading stands for itself, so nothing is kept beyond it.</summary>
/// <param name="time">The clock.</param>
public sealed class CountBench(TimeProvider time)
{
    private readonly ConcurrentDictionary<string, Newest<(ShownCount Count, long At)>> _counts = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>True for a batch that was asked about before: that it is there need not be looked up again.</summary>
    /// <param name="batch">Its name.</param>
    public bool Knows(string batch) => _counts.ContainsKey(batch.Trim());

    /// <summary>A counter is passed on.</summary>
    /// <param name="batch">Name of the batch whose coil is wound.</param>
    /// <param name="count">Where it stands; its number and age are given here.</param>
    public void Pass(string batch, ShownCount count) => Of(batch).Change(_ => (count, time.GetTimestamp()));

    /// <summary>Where the counter stands once it differs from what was seen, or after a while unchanged.</summary>
    /// <param name="batch">Name of the batch whose coil is wound.</param>
    /// <param name="seen">Number of what was seen last; zero for nothing.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ShownCount> NextAsync(string batch, long seen, TimeSpan patience, CancellationToken cancel)
    {
        (long number, (ShownCount count, long at)) = await Of(batch).NextAsync(seen, patience, cancel).ConfigureAwait(false);
        return count with { Number = number, AgeS = Math.Round(time.GetElapsedTime(at).TotalSeconds) };
    }

    private Newest<(ShownCount Count, long At)> Of(string batch) =>
        _counts.GetOrAdd(batch.Trim(), _ => new Newest<(ShownCount, long)>(time, (ShownCount.Nothing, time.GetTimestamp())));
}
