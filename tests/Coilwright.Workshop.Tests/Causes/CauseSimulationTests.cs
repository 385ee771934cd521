using System.Diagnostics;
using System.Globalization;
using Coilwright.Analysis.Diagnosis;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>
/// Causes and verdicts against simulated shops that were not made with the program's own rates (<see cref="FaultRanges"/>): three recipes,
/// with and without targets. Bounds are those that were set beforehand; the draws kept back were not looked at while the causes were worked
/// on.
/// </summary>
public sealed class CauseSimulationTests(ITestOutputHelper output)
{
    /// <summary>Batches of each kind of fault, recipe and set of draws; more by hand for a report.</summary>
    private static readonly int s_each = int.TryParse(
        Environment.GetEnvironmentVariable("CAUSE_EACH"),
        CultureInfo.InvariantCulture,
        out int each
    )
        ? each
        : 2;

    private static readonly Lazy<Dictionary<bool, IReadOnlyList<JudgedCoil>>> s_open = new(() => Faults(CauseRun.Open)),
        s_keptBack = new(() => Faults(CauseRun.KeptBack));

    private static readonly int[] s_draws = [CauseRun.Open, CauseRun.KeptBack];

    [Theory]
    [InlineData(false)] // R and L
    [InlineData(true)] // R, L and Q
    public void The_true_cause_comes_first_or_second(bool quality)
    {
        JudgedCoil[] open = [.. s_open.Value[quality]],
            back = [.. s_keptBack.Value[quality]];
        string readings = quality ? "R, L and Q" : "R and L";
        output.WriteLine(CauseReport.Text(readings + ", open draws", open));
        output.WriteLine(CauseReport.Text(readings + ", draws kept back", back));
        JudgedCoil[] all = [.. open, .. back];
        Record(
            $"The true cause of a faulty coil comes first, by {readings}",
            100 * CauseReport.First(all),
            62,
            CauseReport.Ranked(all).Count()
        );
        Record(
            $"The true cause of a faulty coil is among the first two, by {readings}",
            100 * CauseReport.AmongTwo(all),
            85,
            CauseReport.Ranked(all).Count()
        );
    }

    [Fact]
    public void Every_coil_of_half_or_twice_the_turns_or_a_number_dropped_is_a_wrong_count()
    {
        JudgedCoil[] slips = [.. Faulty().Where(coil => FaultRanges.Slips.Contains(coil.Coil.Kind))];
        Assert.True(slips.Length > 100);
        Assert.All(slips, coil => Assert.Equal("miscount", coil.First));
    }

    [Fact]
    public void What_is_claimed_over_90_per_cent_of_a_faulty_coil_is_right_93_times_in_100_and_deciles_lie_in_their_bands()
    {
        JudgedCoil[] faulty = [.. Faulty()];
        output.WriteLine(CauseReport.Calibrations("faulty coils", faulty));
        (double claimed, double right, int count) = CauseReport.Calibration(faulty, 0.9, 1.01);
        Assert.True(count >= 100, $"claimed {claimed:P1} of {count}");
        Record("Causes of faulty coils claimed over 90 %: how many are right", 100 * right, 93, count);
        IReadOnlyList<string> outside = CauseReport.OutsideBand(faulty);
        Assert.True(outside.Count <= 1, string.Join("; ", outside));
    }

    [Fact]
    public void A_good_coil_that_is_warm_or_read_on_a_wrong_range_is_held_and_not_rejected()
    {
        foreach (string kind in (string[])["warm coil", "wrong range", "finger across the clips"])
        {
            JudgedCoil[] coils = [.. Faulty().Where(coil => coil.Coil.Kind == kind)];
            double rejected = CauseReport.Share(coils, coil => coil.Verdict.Kind == VerdictKind.Reject);
            output.WriteLine($"{kind}: {rejected:P1} of {coils.Length} rejected");
            Assert.True(coils.Length > 0 && rejected <= 0.05, $"{kind}: {rejected:P1}");
        }
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    public void Healthy_coils_among_faulty_ones_have_no_cause(double faulty)
    {
        JudgedCoil[] coils =
        [
            .. s_draws.SelectMany(seed =>
                new CauseRun(seed)
                    .Mixed(4 * s_each, faulty, quality: false)
                    .Concat(new CauseRun(seed).Mixed(4 * s_each, faulty, quality: true))
            ),
        ];
        JudgedCoil[] healthy = [.. coils.Where(coil => coil.Coil.Cause == "none")];
        double blamed = CauseReport.Share(healthy, coil => coil.First != "none");
        output.WriteLine(CauseReport.Calibrations(string.Create(CultureInfo.InvariantCulture, $"{faulty:P0} faulty"), coils));
        output.WriteLine(
            $"healthy: {blamed:P2} blamed, {CauseReport.Share(healthy, coil => coil.Verdict.Kind == VerdictKind.Reject):P2} rejected, "
                + $"{CauseReport.Share(healthy, coil => coil.Verdict.Kind == VerdictKind.Hold):P2} held of {healthy.Length}"
        );
        Assert.True(healthy.Length > 500 && blamed <= 0.04, $"{blamed:P2}");
        JudgedCoil[] sure = [.. coils.Where(coil => coil.First != "none" && coil.Verdict.Causes[0].Probability >= 0.9)];
        Assert.True(CauseReport.Share(sure, coil => coil.IsRight) >= 0.93);
    }

    [Fact]
    public void Healthy_coils_of_a_spool_within_2_per_cent_have_no_cause()
    {
        JudgedCoil[] coils =
        [
            .. s_draws.SelectMany(seed => new CauseRun(seed).Mixed(3 * s_each, 0, quality: seed == CauseRun.Open, spoolWithin: 0.02)),
        ];
        double blamed = CauseReport.Share(coils, coil => coil.First != "none");
        output.WriteLine($"{blamed:P2} of {coils.Length} blamed");
        Assert.True(coils.Length > 500 && blamed <= 0.04, $"{blamed:P2}");
    }

    [Theory] // a batch whose forecast happens to be wrong the other way by 3 % reads too little off to be said: one in a hundred
    [InlineData(false)]
    [InlineData(true)]
    public void An_inductance_5_per_cent_off_for_a_whole_batch_is_said_once_and_no_coil_is_blamed(bool quality)
    {
        (IReadOnlyList<JudgedCoil> Coils, IReadOnlyList<string> Remarks)[] batches =
        [
            .. s_draws.SelectMany(seed => new CauseRun(seed).InductanceOff(3 * s_each, 0.05, quality)),
        ];
        JudgedCoil[] coils = [.. batches.SelectMany(batch => batch.Coils)];
        Assert.DoesNotContain(coils, coil => coil.First != "none" && !CauseTable.Find(coil.First)!.MovesOhmsAlone);
        double blamed = CauseReport.Share(coils, coil => coil.First != "none"); // of ohms alone, as in any batch: one coil of 864 here
        Assert.True(blamed <= 0.002, $"{blamed:P2}");
        int said = batches.Count(batch => batch.Remarks.Count(remark => remark.Contains("inductance", StringComparison.Ordinal)) == 1);
        output.WriteLine($"said once of {said} of {batches.Length}");
        Assert.True(said >= 0.97 * batches.Length, $"{said} of {batches.Length}");
    }

    /// <summary>The bounds were set before the causes were worked on.</summary>
    private static void Record(string check, double percent, double least, int count) =>
        Evidence
            .Own(
                check,
                "simulated shops, three recipes, sizes and rates written down beforehand, half the draws kept back [FaultRates]",
                "chance: set beforehand; two standard errors of 260 coils are 6 %"
            )
            .Inside(percent, least, 100, "%")
            .Record(FormattableString.Invariant($"of {count}"));

    private static IEnumerable<JudgedCoil> Faulty() => s_open.Value.Values.Concat(s_keptBack.Value.Values).SelectMany(coils => coils);

    private static Dictionary<bool, IReadOnlyList<JudgedCoil>> Faults(int seed)
    {
        CauseRun run = new(seed);
        return new() { [false] = run.Faults(s_each, quality: false, seen: 40), [true] = run.Faults(s_each, quality: true, seen: 40) };
    }
}
