using System.Runtime.CompilerServices;
using Coilwright.Bench.Meters;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>A line of a counter, or why none comes.</summary>
/// <param name="Line">The line; null when the link is lost.</param>
/// <param name="Fault">Why it is lost.</param>
public sealed record CounterLine(string? Line, InstrumentException? Fault = null);

/// <summary>The lines of a counter on the network or on a serial line; a lost link is taken up again by itself.</summary>
/// <param name="time">The clock.</param>
public sealed class CounterLines(TimeProvider time)
{
    private static readonly TimeSpan s_again = TimeSpan.FromSeconds(1);

    /// <summary>Every line from now on, until it is given up.</summary>
    /// <param name="address">Where the counter hangs.</param>
    /// <param name="serial">How its serial line is set.</param>
    /// <param name="cancel">Ends it.</param>
    public async IAsyncEnumerable<CounterLine> ReadAsync(
        MeterAddress address,
        SerialLine serial,
        [EnumeratorCancellation] CancellationToken cancel
    )
    {
        while (true)
        {
            (LinePump? pump, IDisposable? owner, InstrumentException? fault) = await TryOpenAsync(address, serial, cancel)
                .ConfigureAwait(false);
            if (pump is not null)
            {
                try
                {
                    await foreach (string line in pump.Lines.ReadAllAsync(cancel).ConfigureAwait(false))
                    {
                        yield return new CounterLine(line);
                    }
                }
                finally
                {
                    owner!.Dispose();
                    await pump.DisposeAsync().ConfigureAwait(false);
                }

                fault = new InstrumentException(InstrumentTrouble.Lost, "the link to the counter is lost: look at the cable");
            }

            yield return new CounterLine(null, fault);
            await Task.Delay(s_again, time, cancel).ConfigureAwait(false);
        }
    }

    private static async Task<(LinePump?, IDisposable?, InstrumentException?)> TryOpenAsync(
        MeterAddress address,
        SerialLine serial,
        CancellationToken cancel
    )
    {
        try
        {
            (Stream stream, IDisposable owner) = await MeterLinks.OpenStreamAsync(address, serial, cancel).ConfigureAwait(false);
            return (new LinePump(stream, "\n", keepEmpty: true), owner, null);
        }
        catch (InstrumentException fault)
        {
            return (null, null, fault);
        }
    }
}
