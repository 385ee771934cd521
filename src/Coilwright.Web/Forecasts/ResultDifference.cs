using System.Globalization;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Views;

namespace Coilwright.Web.Forecasts;

/// <summary>What differs in the results of designs on one load: each value with its interval, and its change from the first design.</summary>
internal static class ResultDifference
{
    public static IReadOnlyList<(string Name, IReadOnlyList<string> Values)> Between(IReadOnlyList<ComparedDesign> designs, LoadCircuit load)
    {
        if (designs.Count < 2)
        {
            return [];
        }

        ResonancePeak?[] peaks = [.. designs.Select(design => design.Peak(load))];
        return
        [
            Row("DC resistance at 20 °C", [.. designs.Select(design => design.Pickup?.DcResistance.Estimate)], "Ω"),
            Row("Inductance at 1 kHz", [.. designs.Select(design => design.Pickup?.Inductance.Estimate)], "H"),
            Row("Capacitance", [.. designs.Select(design => design.Pickup?.Capacitance.Estimate)], "F"),
            Row("Peak on this load", [.. peaks.Select(peak => peak is { } top ? Estimate.Exact(top.FrequencyHz, Basis.Forecast) : (Estimate?)null)], "Hz"),
            ("Its height", [.. peaks.Select((peak, i) => peak is { } top ? Decibels(top.GainDb, i > 0 && peaks[0] is { } first ? top.GainDb - first.GainDb : null) : "–")]),
            Row("−3 dB", [.. designs.Select(design => design.Fall(load) is { } hz ? Estimate.Exact(hz, Basis.Forecast) : (Estimate?)null)], "Hz"),
            ("Thermal noise", [.. designs.Select((design, i) => Noise(design, load, i > 0 ? designs[0] : null))]),
        ];
    }

    private static (string, IReadOnlyList<string>) Row(string name, Estimate?[] values, string unit) => (name, [.. values.Select((value, i) =>
    {
        if (value is not { } here)
        {
            return "–";
        }

        string interval = here.IsExact ? "" : $" ({FigureText.Interval(here, unit)})";
        string change = i > 0 && values[0] is { } first && Math.Abs(first.Value) > 0 ? string.Create(CultureInfo.InvariantCulture, $", {100 * (here.Value / first.Value - 1):+0.0;−0.0;0.0} %") : "";
        return FigureText.Write(here.Value, unit) + interval + change;
    })]);

    private static string Decibels(double value, double? change) =>
        string.Create(CultureInfo.InvariantCulture, $"{value:+0.0;−0.0;0.0} dB") + (change is { } by ? string.Create(CultureInfo.InvariantCulture, $", {by:+0.0;−0.0;0.0} dB") : "");

    private static string Noise(ComparedDesign design, LoadCircuit load, ComparedDesign? first)
    {
        double volt = design.NoiseV(load), other = first?.NoiseV(load) ?? 0;
        return volt <= 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{20 * Math.Log10(volt):0.0} dBV") + (other > 0 ? string.Create(CultureInfo.InvariantCulture, $", {20 * Math.Log10(volt / other):+0.0;−0.0;0.0} dB") : "");
    }
}
