namespace Coilwright.Analysis.Forecasts;

/// <summary>Where a peak stood, and at what inductance and capacitance.</summary>
/// <param name="FrequencyHz">Of the peak.</param>
/// <param name="InductanceH">Then.</param>
/// <param name="CapacitanceF">Then; null when the load's capacitance rules.</param>
internal sealed record PeakPredictor(double FrequencyHz, double InductanceH, double? CapacitanceF)
{
    public double Guess(double inductanceH, double capacitanceF) =>
        FrequencyHz * Math.Sqrt(InductanceH / inductanceH * (CapacitanceF is { } then && capacitanceF > 0 ? then / capacitanceF : 1));
}
