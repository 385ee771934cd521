using System.Globalization;
using Coilwright.Bench.Meters;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>What an instrument read, and what is to be known of it.</summary>
/// <param name="Answer">The reading: the mean of those that stood still, with the last line as it came.</param>
/// <param name="Note">What to know; empty when there is nothing.</param>
public sealed record MeterReadingOutcome(MeterAnswer Answer, string Note);

/// <summary>A person reads an instrument once: when its value stands still.</summary>
/// <param name="time">The clock.</param>
public sealed class ReadMeter(TimeProvider time)
{
    /// <summary>How long a value may move, beyond the time it must stand still.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(10);

    /// <summary>How long to wait between two questions.</summary>
    private static readonly TimeSpan s_pause = TimeSpan.FromMilliseconds(50);

    /// <summary>The reading.</summary>
    /// <param name="profile">How the instrument is asked.</param>
    /// <param name="address">Where it hangs.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="InstrumentException">It gives none, or none that stands still.</exception>
    public async Task<MeterReadingOutcome> ReadAsync(MeterProfile profile, MeterAddress address, CancellationToken cancel)
    {
        OpenMeter meter = await OpenMeter.OpenAsync(profile, address, cancel).ConfigureAwait(false);
        await using (meter.ConfigureAwait(false))
        {
            MeterAnswer first = await meter.AskAsync(cancel).ConfigureAwait(false);
            return first.IsOverRange || profile.Settle == TimeSpan.Zero
                ? new MeterReadingOutcome(first, "")
                : await StandingAsync(profile, meter, first, cancel).ConfigureAwait(false);
        }
    }

    private async Task<MeterReadingOutcome> StandingAsync(
        MeterProfile profile,
        OpenMeter meter,
        MeterAnswer first,
        CancellationToken cancel
    )
    {
        Standstill still = new(profile.Settle, profile.Still);
        long start = time.GetTimestamp();
        MeterAnswer last = first;
        for (int asked = 1; ; asked++)
        {
            TimeSpan passed = time.GetElapsedTime(start);
            if (last.IsOverRange)
            {
                return new MeterReadingOutcome(last, "the value went over range while it was awaited");
            }

            if (still.Add(passed, last.Value) is { } value)
            {
                return new MeterReadingOutcome(last with { Value = value }, "");
            }

            if (passed > profile.Settle + s_patience)
            {
                throw Moving(profile.Kind, still.Range, last.Raw);
            }

            await Task.Delay(s_pause, time, cancel).ConfigureAwait(false);
            try
            {
                last = await meter.AskAsync(cancel).ConfigureAwait(false);
            }
            catch (InstrumentException fault) when (asked == 1 && fault.Trouble is InstrumentTrouble.Lost or InstrumentTrouble.Silent)
            {
                return new MeterReadingOutcome(first, "the instrument answered once only: whether the value stood still is not known");
            }
        }
    }

    private static InstrumentException Moving(QuantityKind kind, (double Low, double High) range, string raw)
    {
        string said = string.Create(
            CultureInfo.InvariantCulture,
            $"the value does not stand still (near {QuantityParser.Format(range.High, kind, 5)}): are the clips on well, is the coil warm?"
        );
        return new InstrumentException(InstrumentTrouble.Moving, said, raw);
    }
}
