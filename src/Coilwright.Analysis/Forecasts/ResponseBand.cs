namespace Coilwright.Analysis.Forecasts;

/// <summary>Between which gains the response lies in 95 of 100 pickups, frequency by frequency.</summary>
/// <param name="Loaded">True on the load, false bare.</param>
/// <param name="FrequencyHz">Frequencies, Hz, rising.</param>
/// <param name="LowDb">Lower edge, dB over 20 Hz.</param>
/// <param name="HighDb">Upper edge, dB over 20 Hz.</param>
public sealed record ResponseBand(
    bool Loaded,
    IReadOnlyList<double> FrequencyHz,
    IReadOnlyList<double> LowDb,
    IReadOnlyList<double> HighDb
);
