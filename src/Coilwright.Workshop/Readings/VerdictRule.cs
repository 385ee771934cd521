using Coilwright.Analysis.Diagnosis;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Readings;

/// <summary>Judges a coil by its readings in force. Resistance is compared at 20 °C, always.</summary>
public static class VerdictRule
{
    /// <summary>Two readings of one thing nearer than this part of one are the same reading taken twice. Our assumption: a bench meter repeats to 0.1 %.</summary>
    public const double SameWithin = 0.002;

    /// <summary>Q below this part of the expected one is loss, not scatter. Our assumption, no source.</summary>
    private const double LeastQuality = 0.75;

    private static readonly VerdictKind[] s_mildestFirst = [VerdictKind.Pass, VerdictKind.Hold, VerdictKind.Reject];

    /// <summary>The verdict on one coil.</summary>
    /// <param name="limits">What it is judged against.</param>
    /// <param name="inForce">Its readings in force, in order of entry.</param>
    public static Verdict Judge(VerdictLimits limits, IReadOnlyList<ReadingRecord> inForce)
    {
        ReadingRecord[] ohms = [.. inForce.Where(reading => reading.Quantity == "dcResistance")];
        ResistanceJudgement? resistance = ohms.Length == 0 ? null : ResistanceJudgement.Of(limits.Resistance, ohms[^1]);
        List<Finding> findings = [resistance?.Finding ?? new Finding(VerdictKind.Hold, "no resistance has been read yet")];
        findings.AddRange(inForce.Where(reading => reading.Quantity == "inductance").TakeLast(1).Select(reading => Inductance(limits.Inductance, reading)));
        findings.AddRange(inForce.Where(reading => reading.Quantity == "q").TakeLast(1).Select(reading => Quality(limits, reading)).OfType<Finding>());
        findings.AddRange(inForce.Where(reading => reading.Flag.Length > 0 && reading.Flag != PossibleReading.Open).Select(Flagged));
        Finding[] twice = [.. inForce.GroupBy(reading => (reading.Quantity, reading.AtHz)).Select(ReadTwice).OfType<Finding>()];
        bool disagree = twice.Any(finding => finding.Kind == VerdictKind.Hold);
        findings.AddRange(twice);
        VerdictKind kind = disagree ? VerdictKind.Hold : s_mildestFirst.Last(one => findings.Any(finding => finding.Kind == one));
        bool readable = !disagree && resistance is not { IsRiddle: true };
        IReadOnlyList<Cause> causes = kind == VerdictKind.Pass || !readable ? [] : Causes(limits, inForce, resistance);
        return new Verdict(kind, resistance?.OhmAt20C, [.. findings.Where(finding => kind == VerdictKind.Pass || finding.Kind != VerdictKind.Pass).Select(finding => finding.Reason).Distinct()], causes);
    }

    private static Finding Flagged(ReadingRecord reading) => new(VerdictKind.Hold, $"\"{reading.Typed}\" is kept: {reading.Flag}");

    private static Finding Inductance(Band? band, ReadingRecord reading)
    {
        if (reading.Si is not { } henry || PossibleReading.FlagOf("inductance", henry).Length > 0)
        {
            return new Finding(VerdictKind.Hold, $"the inductance \"{reading.Typed}\" is {(reading.Flag.Length > 0 ? reading.Flag : "outside what a coil can read")}");
        }

        string said = Written(henry, QuantityKind.Inductance) + At(reading.AtHz);
        if (band is not { IsTarget: true })
        {
            return new Finding(VerdictKind.Pass, said + ", for which the recipe sets no target");
        }

        if (reading.AtHz is { } hz && band.AtHz is { } target && Math.Abs(hz - target) > 0.02 * target)
        {
            return new Finding(VerdictKind.Pass, $"{said}, not compared: the target holds at {QuantityText.Format(target, QuantityKind.Frequency)}");
        }

        return henry >= band.Low && henry <= band.High
            ? new Finding(VerdictKind.Pass, said + " is within its target")
            : new Finding(VerdictKind.Reject, $"{said} is outside its target of {Written(band.Low, QuantityKind.Inductance)} to {Written(band.High, QuantityKind.Inductance)}");
    }

    private static Finding? Quality(VerdictLimits limits, ReadingRecord reading)
    {
        if (reading is not { Si: { } q, AtHz: { } hz } || limits.ExpectedQ(hz) is not { } expected)
        {
            return null;
        }

        string said = FormattableString.Invariant($"Q of {q:0.0#}{At(hz)} against {expected:0.0} expected");
        return q >= LeastQuality * expected ? new Finding(VerdictKind.Pass, said) : new Finding(VerdictKind.Reject, said + ": loss");
    }

    /// <summary>Two readings of one quantity, neither of which takes the other's place: nothing is overwritten, a person decides.</summary>
    private static Finding? ReadTwice(IEnumerable<ReadingRecord> same)
    {
        ReadingRecord[] readings = [.. same];
        if (readings.Length < 2)
        {
            return null;
        }

        string typed = string.Join(" and ", readings.Select(reading => reading.Typed));
        bool allOpen = readings.All(reading => reading.Flag == PossibleReading.Open);
        double[] values = [.. readings.Where(reading => reading.Si is not null && reading.Flag.Length == 0).Select(ResistanceJudgement.Comparable)];
        bool agree = allOpen || (values.Length == readings.Length && values.Max() - values.Min() <= SameWithin * Math.Abs(values.Max()));
        return agree
            ? new Finding(VerdictKind.Pass, $"read {readings.Length} times, the same: {typed}")
            : new Finding(VerdictKind.Hold, $"read {readings.Length} times and the readings disagree: {typed}; correct the wrong one");
    }

    private static IReadOnlyList<Cause> Causes(VerdictLimits limits, IReadOnlyList<ReadingRecord> inForce, ResistanceJudgement? resistance)
    {
        ReadingRecord? henry = inForce.LastOrDefault(reading => reading is { Quantity: "inductance", Si: > 0 }), q = inForce.LastOrDefault(reading => reading is { Quantity: "q", Si: > 0 });
        double? turns = inForce.LastOrDefault(reading => reading.Turns is > 0)?.Turns;
        bool comparable = henry is not null && limits.Inductance is { } band && !(henry.AtHz is { } hz && band.AtHz is { } at && Math.Abs(hz - at) > 0.02 * at);
        CoilEvidence evidence = new()
        {
            Open = resistance?.IsOpen ?? false,
            OhmAt20C = resistance?.OhmAt20C is { Value: > 0 } ohm ? ohm.Value : null,
            NominalOhm = limits.Resistance.Nominal,
            OhmOffset = Math.Max(0.006, RelativeDeviation(limits.Resistance, targetDeviation: 0.006)),
            TemperatureKnown = resistance?.TemperatureKnown ?? false,
            InductanceRatio = comparable ? henry!.Si / limits.Inductance!.Nominal : null,
            InductanceOffset = limits.Inductance is { } known ? Math.Max(0.01, RelativeDeviation(known, targetDeviation: 0.01)) : 0.01,
            QualityRatio = q?.AtHz is { } qAt && limits.ExpectedQ(qAt) is { } expected ? q.Si / expected : null,
            TurnsRatio = limits.NominalTurns > 0 ? turns / limits.NominalTurns : null,
            NominalTurns = limits.NominalTurns,
            CoilsInSeries = limits.CoilsInSeries,
        };
        return [.. CauseFinder.Find(evidence).Select(cause => new Cause(cause.Name, cause.Probability, cause.Detail))];
    }

    /// <summary>A target is where a shop's coils lie; a forecast has its own doubt.</summary>
    private static double RelativeDeviation(Band band, double targetDeviation) =>
        band.IsTarget ? targetDeviation : (band.High - band.Low) / (2 * Estimate.Sigmas95 * band.Nominal);

    private static string Written(double si, QuantityKind kind) => QuantityText.Format(si, kind, 4);

    private static string At(double? hz) => hz is { } known ? " at " + QuantityText.Format(known, QuantityKind.Frequency) : "";
}

/// <summary>One thing found out about a coil, and what it means for the verdict.</summary>
internal sealed record Finding(VerdictKind Kind, string Reason);
