using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Web.Views;

/// <summary>One coil on the strip.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Value">Resistance at 20 °C, Ω; null for an open coil, which stands at the upper edge.</param>
/// <param name="Kind">The verdict.</param>
public sealed record ResistanceChartPoint(string Tag, Estimate? Value, VerdictKind Kind);

/// <summary>
/// A run of coils as a strip: DC resistance at 20 °C in order of entry, with the limits that the verdict holds it against.
/// </summary>
/// <param name="Points">Coils with a usable resistance, and open ones.</param>
/// <param name="Limits">The limits, Ω at 20 °C.</param>
public sealed record ResistanceChart(IReadOnlyList<ResistanceChartPoint> Points, Band Limits)
{
    public static ResistanceChart Of(BatchStatus standing) =>
        new(
            [
                .. standing
                    .Coils.Where(IsDrawn)
                    .Select(coil => new ResistanceChartPoint(coil.Tag, coil.Verdict.DcResistanceAt20C, coil.Verdict.Kind)),
            ],
            standing.Limits.Resistance
        )
        {
            LimitsOrigin = standing.Limits.Origin?.Words ?? "",
            Run = BatchChart.Of(standing.Coils.Select(coil => (coil.Tag, coil.Verdict))),
            NotDrawn = [.. standing.Coils.Where(coil => !IsDrawn(coil)).Select(coil => coil.Tag)],
        };

    /// <summary>The run as a chart with its own limits and signals; null for fewer than two coils that count.</summary>
    public RunChart? Run { get; init; }

    /// <summary>Where the limits come from, in words; empty when they are not kept.</summary>
    public string LimitsOrigin { get; init; } = "";

    /// <summary>Tags of coils without a usable resistance: not read, or not understood.</summary>
    public IReadOnlyList<string> NotDrawn { get; init; } = [];

    private static bool IsDrawn(CoilDossier coil) => coil.Verdict.DcResistanceAt20C is not null || IsOpen(coil);

    private static bool IsOpen(CoilDossier coil) =>
        coil.InForce.LastOrDefault(reading => reading.Quantity == QuantityKey.DcResistance) is { Flag: PossibleReading.Open };
}
