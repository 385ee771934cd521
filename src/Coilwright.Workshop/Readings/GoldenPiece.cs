using System.Globalization;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>
/// A piece that the shop keeps as its measure. Others are held against what it reads today, on the same meter at the same frequency.
/// </summary>
/// <param name="limits">Limits of the recipe, for how wide resistance and inductance may lie.</param>
/// <param name="golden">The golden piece's readings.</param>
internal sealed class GoldenPiece(VerdictLimits limits, IReadOnlyList<ReadingRecord> golden)
{
    /// <summary>Q further below the golden piece than this is loss. Our assumption, no source.</summary>
    private const double LeastQuality = 0.92;

    /// <summary>Two pieces on one meter: what is left of the forecast's doubt, standard deviations as parts of one.</summary>
    private const double SameMeter = 0.006,
        SameMeterQuality = 0.02;

    /// <summary>Adds the deviations from the golden piece, and rejects what they do not allow.</summary>
    public Verdict Compare(Verdict verdict, IReadOnlyList<ReadingRecord> inForce)
    {
        double? ohm = Off(QuantityKey.DcResistance, inForce),
            henry = Off(QuantityKey.Inductance, inForce),
            quality = Off(QuantityKey.Q, inForce);
        string[] said =
        [
            .. new[] { Said(Quantity.DcResistance, ohm), Said(Quantity.Inductance, henry), Said(Quantity.Q, quality) }.OfType<string>(),
        ];
        if (said.Length == 0)
        {
            return verdict;
        }

        List<string> fails = [];
        double wide = (limits.Resistance.High - limits.Resistance.Low) / 2 / limits.Resistance.Nominal;
        double? wideHenry = limits.Inductance is { IsTarget: true } band ? (band.High - band.Low) / 2 / band.Nominal : null;
        if (Math.Abs(ohm ?? 0) > wide)
        {
            fails.Add("fail: resistance");
        }

        if (wideHenry is { } part && Math.Abs(henry ?? 0) > part)
        {
            fails.Add("fail: inductance");
        }

        if (1 + (quality ?? 0) < LeastQuality)
        {
            fails.Add("fail: too much loss (shorted turns or added metal)");
        }

        return verdict with
        {
            Kind = fails.Count > 0 ? VerdictKind.Reject : verdict.Kind,
            Reasons = [.. fails, "against the golden piece: " + string.Join(", ", said), .. verdict.Reasons],
        };
    }

    /// <summary>Evidence against the golden piece in place of the forecast.</summary>
    public CoilEvidence Rebase(CoilEvidence evidence, IReadOnlyList<ReadingRecord> inForce)
    {
        if (evidence.OhmAt20C is not null && Value(QuantityKey.DcResistance, golden) is { } ohm)
        {
            evidence = evidence with { NominalOhm = ohm, OhmOffset = SameMeter };
        }

        if (Off(QuantityKey.Inductance, inForce) is { } henry)
        {
            evidence = evidence with { InductanceRatio = 1 + henry, InductanceOffset = SameMeter };
        }

        return Off(QuantityKey.Q, inForce) is { } quality
            ? evidence with
            {
                QualityRatio = 1 + quality,
                QualityOffset = SameMeterQuality,
            }
            : evidence;
    }

    private double? Off(string quantity, IReadOnlyList<ReadingRecord> inForce) =>
        Value(quantity, inForce) is { } value && Value(quantity, golden) is { } wanted && SameFrequency(quantity, inForce)
            ? value / wanted - 1
            : null;

    private bool SameFrequency(string quantity, IReadOnlyList<ReadingRecord> inForce) =>
        Last(quantity, inForce)?.AtHz is not { } hz
        || Last(quantity, golden)?.AtHz is not { } other
        || Math.Abs(hz - other) <= 0.02 * other;

    private static double? Value(string quantity, IReadOnlyList<ReadingRecord> readings) => Last(quantity, readings)?.Comparable();

    private static ReadingRecord? Last(string quantity, IReadOnlyList<ReadingRecord> readings) =>
        readings.LastOrDefault(reading => reading.Quantity == quantity && reading is { Si: > 0, Flag: "" });

    private static string? Said(Quantity quantity, double? off) =>
        off is { } part ? string.Create(CultureInfo.InvariantCulture, $"{quantity.ComparedLabel} {part * 100:+0.0;−0.0;0.0} %") : null;
}
