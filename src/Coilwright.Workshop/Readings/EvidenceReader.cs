using Coilwright.Analysis.Diagnosis;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>Sets a coil's readings beside what a good coil reads.</summary>
internal static class EvidenceReader
{
    /// <summary>The evidence; frequencies that cannot be foretold are left out.</summary>
    public static CoilEvidence Of(VerdictLimits limits, IReadOnlyList<ReadingRecord> inForce, ResistanceJudgement? resistance)
    {
        ReadingRecord? henry = inForce.LastOrDefault(reading => reading is { Quantity: QuantityKey.Inductance, Si: > 0 }),
            q = inForce.LastOrDefault(reading => reading is { Quantity: QuantityKey.Q, Si: > 0 });
        double? turns = inForce.LastOrDefault(reading => reading.Turns is > 0)?.Turns;
        ExpectedReading? atHenry = henry is null ? null : limits.Expected(henry.AtHz ?? VerdictLimits.UsualHz),
            atQ = q?.AtHz is { } hz ? limits.Expected(hz) : null;
        double? ofBand = henry is not null && limits.Inductance is { } band && Near(henry.AtHz, band.AtHz) ? henry.Si / band.Nominal : null;
        double? inductanceRatio = atHenry is null ? ofBand : henry!.Si / atHenry.InductanceH;
        (double? wanted, bool isTarget) = henry is null ? (null, false) : limits.WantedInductance(henry.AtHz);
        CoilEvidence evidence = new()
        {
            Open = resistance?.IsOpen ?? false,
            OhmAt20C = resistance?.OhmAt20C is { Value: > 0 } ohm ? ohm.Value : null,
            NominalOhm = limits.Resistance.Nominal,
            OhmOffset = limits.OhmOffset,
            OhmReading = Math.Max(0.002, limits.MeterPart / 2),
            TemperatureKnown = resistance?.TemperatureKnown ?? false,
            WireMeasured = limits.WireMeasured,
            InductanceRatio = inductanceRatio,
            InductanceOverWanted = henry?.Si / wanted,
            InductanceHasTarget = isTarget,
            InductanceOffset = atHenry?.InductanceDeviation ?? 0.02,
            ReactanceAtInductance = atHenry?.Reactance ?? 0,
            AirRatio = Math.Clamp(limits.AirRatio, 0.1, 1),
            TurnsRatio = limits.NominalTurns > 0 ? turns / limits.NominalTurns : null,
            NominalTurns = limits.NominalTurns,
            CoilsInSeries = limits.CoilsInSeries,
        };
        return atQ is null
            ? evidence
            : evidence with
            {
                QualityRatio = q!.Si / atQ.Quality,
                QualityOffset = atQ.QualityDeviation,
                ReactanceAtQuality = atQ.Reactance,
                AcOverDc = atQ.AcOverDc,
                NearnessAtQuality = Nearness(atQ, q.AtHz!.Value, limits.Resistance.Nominal),
            };
    }

    /// <summary>ω²LC from what a good coil's winding has and what a meter shows of it, which is more by 1/(1 − ω²LC), nearly.</summary>
    private static double Nearness(ExpectedReading expected, double hz, double nominalOhm)
    {
        double own = expected.Reactance * nominalOhm / (2 * Math.PI * hz);
        return Math.Clamp(1 - own / expected.InductanceH, 0, 0.5);
    }

    private static bool Near(double? hz, double? target) =>
        hz is not { } read || target is not { } wanted || Math.Abs(read - wanted) <= 0.02 * wanted;
}
