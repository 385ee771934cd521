using Coilwright.Analysis.Diagnosis;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Readings;

/// <summary>Judges a coil by its readings in force. Resistance is compared at 20 °C, always.</summary>
public static class VerdictRule
{
    /// <summary>
    /// Two readings of one thing nearer than this part of one are the same reading taken twice. Our assumption: a bench meter repeats to
    /// 0.1 %.
    /// </summary>
    public const double SameWithin = 0.002;

    /// <summary>Q below this part of the expected one is loss, not scatter. Our assumption, no source.</summary>
    private const double LeastQuality = 0.75;

    private static readonly VerdictKind[] s_mildestFirst = [VerdictKind.Pass, VerdictKind.Hold, VerdictKind.Reject];

    /// <summary>The verdict on one coil.</summary>
    /// <param name="limits">What it is judged against.</param>
    /// <param name="inForce">Its readings in force, in order of entry.</param>
    public static Verdict Judge(VerdictLimits limits, IReadOnlyList<ReadingRecord> inForce)
    {
        (Verdict verdict, CoilEvidence? evidence) = Weigh(limits, inForce);
        return verdict.Kind == VerdictKind.Pass || evidence is null
            ? verdict
            : WithCauses(verdict, CauseFinder.FindAll([evidence])[0], inForce, limits);
    }

    /// <summary>
    /// The same verdict with what was found out about its causes. Where a reading may be at fault, a coil that it rejects is held and read
    /// again; where a fault is as good as sure, a coil that the recipe has no target for is held.
    /// </summary>
    internal static Verdict WithCauses(Verdict verdict, CoilDiagnosis diagnosis, IReadOnlyList<ReadingRecord> inForce, VerdictLimits limits)
    {
        Verdict found = verdict with
        {
            Causes =
            [
                .. Told(verdict, diagnosis.Causes)
                    .Select(cause => new Cause(cause.Name, cause.Probability, cause.Detail) { OfBatch = cause.OfBatch }),
            ],
            Next = diagnosis.Next,
            Group = diagnosis.Group,
        };
        if (verdict.Kind == VerdictKind.Reject && ReadingInDoubt(diagnosis, inForce) is { } why)
        {
            return found with { Kind = VerdictKind.Hold, ReadAgain = true, Reasons = [why, .. verdict.Reasons] };
        }

        return verdict.Kind == VerdictKind.Pass && IsStrong(diagnosis, limits)
            ? found with
            {
                Kind = VerdictKind.Hold,
                Reasons = ["a fault is as good as sure, and the recipe has no target to reject it by", .. verdict.Reasons],
            }
            : found;
    }

    /// <summary>
    /// The causes of a coil that is rejected, given that something is wrong with it, where a fault is nearly as likely as none: the verdict
    /// and its cause say the same. Else as they are.
    /// </summary>
    private static IEnumerable<ProbableCause> Told(Verdict verdict, IReadOnlyList<ProbableCause> causes)
    {
        const double NearlyAsLikely = 0.2;
        if (verdict.Kind != VerdictKind.Reject || causes is not [{ Name: "none" } none, { Probability: > NearlyAsLikely }, ..])
        {
            return causes;
        }

        return causes.Skip(1).Select(cause => cause with { Probability = cause.Probability / (1 - none.Probability) });
    }

    /// <summary>Whether the coil itself has a fault as good as surely, whichever it is, that no target of the recipe would show.</summary>
    private static bool IsStrong(CoilDiagnosis diagnosis, VerdictLimits limits)
    {
        const double AsGoodAsSure = 0.9;
        bool ohms = limits.Resistance.IsTarget,
            henries = limits.Inductance is { IsTarget: true };
        bool IsUnseen(string cause) => cause != "none" && !(CauseTable.Find(cause)!.MovesOhmsAlone ? ohms : henries);
        return diagnosis.Causes.Where(cause => IsUnseen(cause.Name) && !cause.OfBatch).Sum(cause => cause.Probability) >= AsGoodAsSure;
    }

    /// <summary>Why a reading is to be made again before the coil is blamed; null where it is not, or was made again already.</summary>
    private static string? ReadingInDoubt(CoilDiagnosis diagnosis, IReadOnlyList<ReadingRecord> inForce)
    {
        const double WorthReadingAgain = 0.125; // reading again costs two minutes, a rejected coil a new one: our assumption
        ProbableCause[] ofReading = [.. diagnosis.Causes.Where(cause => CauseTable.Find(cause.Name)!.IsOfReading)];
        bool doubted =
            ofReading.Sum(cause => cause.Probability) >= WorthReadingAgain || ofReading.Any(cause => diagnosis.Group.Contains(cause.Name));
        bool twice = inForce.GroupBy(reading => (reading.Quantity, reading.AtHz)).Any(same => same.Count() > 1);
        if (!doubted || twice)
        {
            return null;
        }

        return ofReading[0].Name == "warm-coil" ? "read again when it has cooled" : "read again before it is judged";
    }

    /// <summary>The verdict without causes, and what there is to find them by; null when the readings themselves are in doubt.</summary>
    internal static (Verdict Verdict, CoilEvidence? Evidence) Weigh(VerdictLimits limits, IReadOnlyList<ReadingRecord> inForce)
    {
        ReadingRecord[] ohms = [.. inForce.Where(reading => reading.Quantity == QuantityKey.DcResistance)];
        ResistanceJudgement? resistance = ohms.Length == 0 ? null : ResistanceJudgement.Of(limits.Resistance, ohms[^1], limits.MeterPart);
        List<Finding> findings = [resistance?.Finding ?? new Finding(VerdictKind.Hold, "no resistance has been read yet")];
        findings.AddRange(
            inForce
                .Where(reading => reading.Quantity == QuantityKey.Inductance)
                .TakeLast(1)
                .Select(reading => Inductance(limits.Inductance, reading))
        );
        findings.AddRange(
            inForce
                .Where(reading => reading.Quantity == QuantityKey.Q)
                .TakeLast(1)
                .Select(reading => Quality(limits, reading))
                .OfType<Finding>()
        );
        findings.AddRange(inForce.Where(reading => reading.Flag.Length > 0 && reading.Flag != PossibleReading.Open).Select(Flagged));
        Finding[] twice = [.. inForce.GroupBy(reading => (reading.Quantity, reading.AtHz)).Select(ReadTwice).OfType<Finding>()];
        bool disagree = twice.Any(finding => finding.Kind == VerdictKind.Hold);
        findings.AddRange(twice);
        VerdictKind kind = disagree ? VerdictKind.Hold : s_mildestFirst.Last(one => findings.Any(finding => finding.Kind == one));
        bool readable = !disagree && resistance is not { IsRiddle: true };
        CoilEvidence? evidence = readable ? EvidenceReader.Of(limits, inForce, resistance) : null;
        return (
            new Verdict(
                kind,
                resistance?.OhmAt20C,
                [
                    .. findings
                        .Where(finding => kind == VerdictKind.Pass || finding.Kind != VerdictKind.Pass)
                        .Select(finding => finding.Reason)
                        .Distinct(),
                ],
                []
            ),
            evidence
        );
    }

    /// <summary>
    /// What there is to find causes by, as <see cref="Weigh"/> has it and sooner: a coil that others are judged beside needs no words.
    /// </summary>
    internal static CoilEvidence? Evidence(VerdictLimits limits, IReadOnlyList<ReadingRecord> inForce)
    {
        bool severalTimes = inForce.GroupBy(reading => (reading.Quantity, reading.AtHz)).Any(same => same.Count() > 1);
        if (severalTimes)
        {
            return Weigh(limits, inForce).Evidence;
        }

        ReadingRecord? ohms = inForce.LastOrDefault(reading => reading.Quantity == QuantityKey.DcResistance);
        ResistanceJudgement? resistance = ohms is null
            ? null
            : ResistanceJudgement.Of(limits.Resistance, ohms, limits.MeterPart, inWords: false);
        return resistance is { IsRiddle: true } ? null : EvidenceReader.Of(limits, inForce, resistance);
    }

    private static Finding Flagged(ReadingRecord reading) => new(VerdictKind.Hold, $"\"{reading.Typed}\" is kept: {reading.Flag}");

    private static Finding Inductance(Band? band, ReadingRecord reading)
    {
        if (reading.Si is not { } henry || PossibleReading.FlagOf(QuantityKey.Inductance, henry).Length > 0)
        {
            return new Finding(
                VerdictKind.Hold,
                $"the inductance \"{reading.Typed}\" is {(reading.Flag.Length > 0 ? reading.Flag : "outside what a coil can read")}"
            );
        }

        string said = Written(henry, QuantityKind.Inductance) + At(reading.AtHz);
        if (band is not { IsTarget: true })
        {
            return new Finding(VerdictKind.Pass, said + ", for which the recipe sets no target");
        }

        if (reading.AtHz is { } hz && band.AtHz is { } target && Math.Abs(hz - target) > 0.02 * target)
        {
            return new Finding(
                VerdictKind.Pass,
                $"{said}, not compared: the target holds at {QuantityParser.Format(target, QuantityKind.Frequency)}"
            );
        }

        return henry >= band.Low && henry <= band.High
            ? new Finding(VerdictKind.Pass, said + " is within its target")
            : new Finding(
                VerdictKind.Reject,
                $"{said} is outside its target of {Written(band.Low, QuantityKind.Inductance)} to "
                    + $"{Written(band.High, QuantityKind.Inductance)}"
            );
    }

    private static Finding? Quality(VerdictLimits limits, ReadingRecord reading)
    {
        if (reading.Si is not { } q)
        {
            return null;
        }

        string read = FormattableString.Invariant($"Q of {q:0.0#}{At(reading.AtHz)}");
        if (reading.AtHz is not { } hz)
        {
            return new Finding(VerdictKind.Pass, read + " is not weighed: nobody noted its frequency");
        }

        if (limits.Expected(hz) is not { } expected)
        {
            return new Finding(VerdictKind.Pass, read + " is not weighed: what a good coil reads there is not forecast");
        }

        string said = FormattableString.Invariant($"{read} against {expected.Quality:0.0}, {expected.From}");
        return q >= LeastQuality * expected.Quality
            ? new Finding(VerdictKind.Pass, said)
            : new Finding(VerdictKind.Reject, said + ": loss");
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
        double[] values =
        [
            .. readings.Where(reading => reading.Si is not null && reading.Flag.Length == 0).Select(reading => reading.Comparable()),
        ];
        bool agree = allOpen || (values.Length == readings.Length && values.Max() - values.Min() <= SameWithin * Math.Abs(values.Max()));
        return agree
            ? new Finding(VerdictKind.Pass, $"read {readings.Length} times, the same: {typed}")
            : new Finding(VerdictKind.Hold, $"read {readings.Length} times and the readings disagree: {typed}; correct the wrong one");
    }

    private static string Written(double si, QuantityKind kind) => QuantityParser.Format(si, kind, 4);

    private static string At(double? hz) => hz is { } known ? " at " + QuantityParser.Format(known, QuantityKind.Frequency) : "";
}

/// <summary>One thing found out about a coil, and what it means for the verdict.</summary>
internal sealed record Finding(VerdictKind Kind, string Reason);
