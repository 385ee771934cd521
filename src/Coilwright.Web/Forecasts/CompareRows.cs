using System.Globalization;
using Coilwright.Analysis.Contrasts;
using Coilwright.Papers.Words;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Views;

namespace Coilwright.Web.Forecasts;

/// <summary>Key numbers of compared curves: those of designs with the intervals of their forecasts, those of a measured one as its circuit gives them.</summary>
internal static class CompareRows
{
    /// <summary>What a design does on a load, against the pinned one; null for a measured design.</summary>
    public static IReadOnlyList<ContrastLine>? Lines(ComparedDesign design, ComparedDesign pinned, LoadCircuit load) => design.Solved is { } solved
        ? Contrast.Between((pinned.Solved ?? solved).On(load, inCircuit: true), solved.On(load, inCircuit: true))
        : null;

    /// <summary>One curve.</summary>
    /// <param name="name">Name of the curve.</param>
    /// <param name="design">Its design.</param>
    /// <param name="pinned">The design that it is told against; the same one for the pinned itself.</param>
    /// <param name="load">What it hangs on.</param>
    /// <param name="lines">Of <see cref="Lines"/>.</param>
    public static CompareRow Of(string name, ComparedDesign design, ComparedDesign pinned, LoadCircuit load, IReadOnlyList<ContrastLine>? lines)
    {
        if (lines is null)
        {
            return Measured(name, design, pinned, load);
        }

        bool silent = Find(lines, "level")?.Second is null;
        CompareCell Cell(string quantity, string missing = "–") => Find(lines, quantity) is { Second: { } value } line
            ? new CompareCell(FigureText.Write(value.Value, line.Unit), FigureText.Interval(value, line.Unit)) : new CompareCell(missing);
        string change = design == pinned ? "pinned"
            : pinned.Solved is not null && Find(lines, "loadedPeak") is { Difference: not null } peak && Find(lines, "loadedPeakGain") is { } gain ? $"{ContrastWords.Change(peak)}, {ContrastWords.Change(gain)}" : "–";
        return new CompareRow(name, Cell("loadedPeak", silent ? "silent" : "no peak"), Cell("loadedPeakGain"), Cell("loadedPeakQ"), Cell("minus3Db"), Cell("level"), Cell("noise"), change);
    }

    private static ContrastLine? Find(IReadOnlyList<ContrastLine> lines, string name) => lines.FirstOrDefault(line => line.Name == name);

    private static CompareRow Measured(string name, ComparedDesign design, ComparedDesign pinned, LoadCircuit load)
    {
        ResonancePeak? peak = design.Peak(load), against = design == pinned ? null : pinned.Peak(load);
        Response low = design.Compute(load, [20]);
        string change = design == pinned ? "pinned" : peak is { } here && against is { } there
            ? string.Create(CultureInfo.InvariantCulture, $"{100 * (here.FrequencyHz / there.FrequencyHz - 1):+0.0;−0.0} %, {here.GainDb - there.GainDb:+0.0;−0.0} dB") : "–";
        return new CompareRow(
            name,
            new(peak is { } top ? FigureText.Write(top.FrequencyHz, "Hz") : low.IsSilent ? "silent" : "no peak"),
            new(peak is { } height ? FigureText.Write(height.GainDb, "dB") : "–"),
            new(peak is { } sharp ? FigureText.Write(sharp.Q, "1") : "–"),
            new(design.Fall(load) is { } fall ? FigureText.Write(fall, "Hz") : "–"),
            new(low.IsSilent ? "–" : FigureText.Write(low.LowFrequencyGainDb, "dB")),
            new(low.IsSilent ? "–" : FigureText.Write(20 * Math.Log10(design.NoiseV(load)), "dBV")),
            change);
    }
}
