using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Measuring;

namespace Coilwright.Application.Measuring;

/// <summary>A measurement signal as typed; what is empty is as usual.</summary>
/// <param name="From">First frequency; 20 Hz unless said.</param>
/// <param name="To">Last frequency; 20 kHz unless said.</param>
/// <param name="Length">Length; 10 s unless said.</param>
public sealed record SignalQuestion(string From = "", string To = "", string Length = "")
{
    /// <summary>The signal; where something is wrong, the usual stands for it and the reader has the problem.</summary>
    internal LogSweep Read(QuantityReader typed) =>
        new(
            typed.Read("from", From, MeasureLimits.SignalFrom) ?? 20,
            typed.Read("to", To, MeasureLimits.SignalTo) ?? 20_000,
            typed.Read("length", Length, MeasureLimits.SignalLength) ?? 10
        );
}
