using System.Globalization;
using Coilwright.Bench;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Measuring;

/// <summary>A measurement signal as a sound file.</summary>
public sealed record MadeSignal(LogSweep Sweep, byte[] Wave);

/// <summary>A person wants the measurement signal to play.</summary>
public sealed class MakeSignal
{
    /// <summary>Samples a second unless another rate is said.</summary>
    public const int UsualRateHz = 48_000;

    /// <summary>Half of full scale, so that no player overdrives it.</summary>
    private const double Level = 0.5;

    /// <summary>The signal, or every problem by its field: "from", "to", "length", "rate".</summary>
    /// <param name="asked">The signal.</param>
    /// <param name="rateHz">Samples a second.</param>
    /// <param name="unitRequired">True to refuse bare numbers.</param>
    public ReadOutcome<MadeSignal> Make(SignalQuestion asked, int rateHz, bool unitRequired)
    {
        QuantityReader typed = new(unitRequired);
        LogSweep sweep = asked.Read(typed);
        if (rateHz is < 8000 or > 384_000 || sweep.ToHz >= 0.48 * rateHz)
        {
            typed.Add(
                new Problem(
                    "rate",
                    "too few samples per second for the last frequency, or out of range",
                    rateHz.ToString(CultureInfo.InvariantCulture),
                    "8000 to 384000, above 2.1 times the last frequency"
                )
            );
        }

        return typed.Problems.Count > 0
            ? new ReadOutcome<MadeSignal>(null, typed.Problems)
            : new ReadOutcome<MadeSignal>(new MadeSignal(sweep, WaveFile.Write(rateHz, sweep.Samples(rateHz, Level))), []);
    }
}
