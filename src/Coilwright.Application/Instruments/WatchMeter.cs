using System.Runtime.CompilerServices;
using Coilwright.Bench.Meters;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>What is seen while an instrument is watched.</summary>
public abstract record MeterSight
{
    private MeterSight() { }

    /// <summary>A value, moving or standing.</summary>
    /// <param name="Answer">The reading.</param>
    public sealed record Live(MeterAnswer Answer) : MeterSight;

    /// <summary>A value that stands still, told once while it hangs on.</summary>
    /// <param name="Id">Names it for good: whoever records it twice records it once.</param>
    /// <param name="Answer">The mean of the standing readings, with the last line as it came.</param>
    public sealed record Standing(Guid Id, MeterAnswer Answer) : MeterSight;

    /// <summary>Over range: nothing is clipped on, or an open coil.</summary>
    /// <param name="Answer">The reading.</param>
    public sealed record Off(MeterAnswer Answer) : MeterSight;

    /// <summary>The instrument gives no reading; it is tried again.</summary>
    /// <param name="Fault">Why.</param>
    public sealed record Trouble(InstrumentException Fault) : MeterSight;
}

/// <summary>A person has an instrument watched: coil after coil, hands free.</summary>
/// <param name="time">The clock.</param>
public sealed class WatchMeter(TimeProvider time)
{
    private static readonly TimeSpan s_pause = TimeSpan.FromMilliseconds(40),
        s_again = TimeSpan.FromSeconds(1);

    /// <summary>What the instrument shows from now on, until it is given up; a lost line is taken up again by itself.</summary>
    /// <param name="profile">How the instrument is asked.</param>
    /// <param name="address">Where it hangs.</param>
    /// <param name="cancel">Ends it.</param>
    public async IAsyncEnumerable<MeterSight> WatchAsync(
        MeterProfile profile,
        MeterAddress address,
        [EnumeratorCancellation] CancellationToken cancel
    )
    {
        Standstill still = new(profile.Settle, profile.Still);
        long start = time.GetTimestamp();
        KeptMeter meter = new(profile, address);
        await using (meter.ConfigureAwait(false))
        {
            while (!cancel.IsCancellationRequested)
            {
                (MeterAnswer? answer, InstrumentException? fault) = await meter.AskAsync(cancel).ConfigureAwait(false);
                yield return fault is not null
                    ? new MeterSight.Trouble(fault)
                    : SightOf(answer!, still.Add(time.GetElapsedTime(start), answer!.Value));
                await Task.Delay(fault is not null ? s_again : PauseOf(profile), time, cancel).ConfigureAwait(false);
            }
        }
    }

    /// <summary>An instrument that sends by itself sets its own pace.</summary>
    private static TimeSpan PauseOf(MeterProfile profile) => profile.Ask.Length > 0 ? s_pause : TimeSpan.Zero;

    private static MeterSight SightOf(MeterAnswer answer, double? standing)
    {
        if (answer.IsOverRange)
        {
            return new MeterSight.Off(answer);
        }

        return standing is { } value ? new MeterSight.Standing(Guid.NewGuid(), answer with { Value = value }) : new MeterSight.Live(answer);
    }
}
