using System.Globalization;
using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Comparisons;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Circuit;

namespace Coilwright.Web.Views.Comparisons;

/// <summary>
/// Key numbers of compared curves: those of designs with the intervals of their forecasts, those of a measured one as its circuit gives
/// them.
/// </summary>
internal static class CompareRows
{
    private const string Pinned = "pinned";

    /// <summary>One curve.</summary>
    /// <param name="name">Name of the curve.</param>
    /// <param name="design">Its design.</param>
    /// <param name="pinned">The design that it is told against; the same one for the pinned itself.</param>
    /// <param name="load">What it hangs on.</param>
    /// <param name="lines">What the design does against the pinned one; null for a measured one.</param>
    public static CompareRow Of(
        string name,
        ComparedDesign design,
        ComparedDesign pinned,
        LoadCircuit load,
        IReadOnlyList<ComparisonLine>? lines
    )
    {
        if (lines is null)
        {
            return Measured(name, design, pinned, load);
        }

        bool silent = Find(lines, QuantityKey.Level)?.Second is null;
        CompareCell Cell(string quantity, string missing = "–") =>
            Find(lines, quantity) is { Second: { } value } line
                ? new CompareCell(ForecastNumberFormatter.Write(value.Value, line.Unit), ForecastNumberFormatter.Interval(value, line.Unit))
                : new CompareCell(missing);
        string change =
            pinned.Solved is not null
            && Find(lines, QuantityKey.LoadedPeak) is { Difference: not null } peak
            && Find(lines, QuantityKey.LoadedPeakGain) is { } gain
                ? $"{ComparisonFormatter.Change(peak)}, {ComparisonFormatter.Change(gain)}"
                : "–";
        return new CompareRow(
            name,
            Cell(QuantityKey.LoadedPeak, silent ? "silent" : "no peak"),
            Cell(QuantityKey.LoadedPeakGain),
            Cell(QuantityKey.LoadedPeakQ),
            Cell(QuantityKey.Minus3Db),
            Cell(QuantityKey.Level),
            Cell(QuantityKey.Noise),
            design == pinned ? Pinned : change
        );
    }

    private static ComparisonLine? Find(IReadOnlyList<ComparisonLine> lines, string name) =>
        lines.FirstOrDefault(line => line.Name == name);

    private static CompareRow Measured(string name, ComparedDesign design, ComparedDesign pinned, LoadCircuit load)
    {
        ResonancePeak? peak = design.Peak(load),
            against = design == pinned ? null : pinned.Peak(load);
        Response low = design.Compute(load, [20]);
        string change =
            peak is { } here && against is { } there
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{100 * (here.FrequencyHz / there.FrequencyHz - 1):+0.0;−0.0} %, {here.GainDb - there.GainDb:+0.0;−0.0} dB"
                )
                : "–";
        string without = low.IsSilent ? "silent" : "no peak";
        return new CompareRow(
            name,
            new(peak is { } top ? ForecastNumberFormatter.Write(top.FrequencyHz, "Hz") : without),
            new(peak is { } height ? ForecastNumberFormatter.Write(height.GainDb, "dB") : "–"),
            new(peak is { } sharp ? ForecastNumberFormatter.Write(sharp.Q, "1") : "–"),
            new(design.Fall(load) is { } fall ? ForecastNumberFormatter.Write(fall, "Hz") : "–"),
            new(low.IsSilent ? "–" : ForecastNumberFormatter.Write(low.LowFrequencyGainDb, "dB")),
            new(low.IsSilent ? "–" : ForecastNumberFormatter.Write(20 * Math.Log10(design.NoiseV(load)), "dBV")),
            design == pinned ? Pinned : change
        );
    }
}
