using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts;

/// <summary>Curves for pictures, at the middle of every interval, and what is told of each string beside its output.</summary>
public sealed record PickupPictures
{
    /// <summary>
    /// Vertical flux density of the magnets across the strings at the height of the middle string, one line for each row of coils.
    /// </summary>
    public IReadOnlyList<FieldLine> Fields { get; init; } = [];

    /// <summary>Output of the middle string if it stood elsewhere across the pickup: place in m, V per m/s.</summary>
    public IReadOnlyList<(double XM, double VoltSPerM)> Across { get; init; } = [];

    /// <summary>
    /// What is heard along the middle string: place from the first coil's middle in m, share of the output per metre, 1/m.
    /// </summary>
    public IReadOnlyList<(double YM, double SharePerM)> Along { get; init; } = [];

    /// <summary>Series inductance and AC resistance without self-capacitance: Hz, H, Ω.</summary>
    public IReadOnlyList<(double FrequencyHz, double InductanceH, double ResistanceOhm)> Branch { get; init; } = [];

    /// <summary>By string.</summary>
    public IReadOnlyList<StringDetail> Strings { get; init; } = [];

    /// <summary>Amplitude that the overtones are stated for, m.</summary>
    public double AmplitudeM { get; init; }
}

/// <summary>Field along x.</summary>
/// <param name="YM">Which row, m.</param>
/// <param name="HeightM">z, m.</param>
/// <param name="Points">Place in m, flux density in T.</param>
public sealed record FieldLine(double YM, double HeightM, IReadOnlyList<(double XM, double T)> Points);

/// <summary>One string beside its output.</summary>
/// <param name="Number">1 at the lowest x.</param>
/// <param name="BalanceDb">Output against the mean of all, dB; steel and magnets, which all strings share, are not in its interval.</param>
/// <param name="PullN">Pull of the magnets, N.</param>
/// <param name="PitchShift">Change of the open string's pitch, as a part of it; null without scale length and place.</param>
/// <param name="SecondHarmonic">Voltage of the second harmonic over the fundamental's.</param>
/// <param name="ThirdHarmonic">The third's.</param>
public sealed record StringDetail(
    int Number,
    Estimate BalanceDb,
    Estimate PullN,
    Estimate? PitchShift,
    Estimate SecondHarmonic,
    Estimate ThirdHarmonic
);
