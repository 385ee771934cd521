using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Causes;

public sealed class CauseSimulationTests(ITestOutputHelper output)
{
    [Fact]
    public void Report()
    {
        System.Diagnostics.Stopwatch watch = System.Diagnostics.Stopwatch.StartNew();
        StringBuilderLog();
        void StringBuilderLog()
        {
            CauseRun run = new(int.TryParse(Environment.GetEnvironmentVariable("CAUSE_SEED"), out int s) ? s : CauseRun.Open);
            _ = SimulatedRecipe.All.Count;
            foreach (SimulatedRecipe one in SimulatedRecipe.All)
            {
                output.WriteLine(
                    $"{one.Name}: {one.Physics.Good} air {one.Limits.AirRatio:0.00} offs {one.Limits.OhmOffset:0.0000} {one.Limits.Expected(1000)} {one.Limits.Expected(3000)} wrong cores {string.Join(" ", one.Physics.WrongCores.Select(c => (c.HenryLow / one.Physics.Good.HenryLow).ToString("0.00")))} half {one.Physics.WithTurns(0.5).Ohm / one.Physics.Good.Ohm:0.000} {one.Physics.WithTurns(0.5).HenryLow / one.Physics.Good.HenryLow:0.000} tenth {one.Physics.WithTurns(0.1).Ohm / one.Physics.Good.Ohm:0.0000} {one.Physics.WithTurns(0.1).HenryLow / one.Physics.Good.HenryLow:0.00000} dbl {one.Physics.WithTurns(2).Ohm / one.Physics.Good.Ohm:0.000} {one.Physics.WithTurns(2).HenryLow / one.Physics.Good.HenryLow:0.000} gauge {one.Physics.OneGauge.Ohm / one.Physics.Good.Ohm:0.000} {one.Physics.OneGauge.HenryLow / one.Physics.Good.HenryLow:0.000} 1.1: {one.Physics.WithTurns(1.1).Ohm / one.Physics.Good.Ohm:0.000} {one.Physics.WithTurns(1.1).HenryLow / one.Physics.Good.HenryLow:0.000}"
                );
            }
            output.WriteLine($"setup {watch.Elapsed}");
            watch.Restart();
            int each = int.TryParse(Environment.GetEnvironmentVariable("CAUSE_EACH"), out int e) ? e : 5;
            List<JudgedCoil> all = [];
            foreach ((bool q, bool l) in new[] { (false, false), (false, true), (true, true) })
            {
                IReadOnlyList<JudgedCoil> faults = run.Faults(each, q, l, seen: 60);
                output.WriteLine(
                    CauseReport.Text(
                        l
                            ? q
                                ? "R+L+Q"
                                : "R+L"
                            : "R",
                        faults
                    )
                );
                if (l)
                    all.AddRange(faults);
                output.WriteLine($"{watch.Elapsed}");
            }
            output.WriteLine(CauseReport.Calibrations("faulty, one a batch", [.. CauseReport.Ranked(all)]));
            output.WriteLine(string.Join("\n", CauseReport.OutsideBand(CauseReport.Ranked(all))));
            foreach (double p in new[] { 0.01, 0.1 })
            {
                List<JudgedCoil> mixed = [.. run.Mixed(4 * each, p, false), .. run.Mixed(4 * each, p, true)];
                output.WriteLine(CauseReport.Calibrations($"mixed {p} all", mixed));
                output.WriteLine(CauseReport.Calibrations($"mixed {p} faulty", [.. mixed.Where(c => c.Coil.Cause != "none")]));
                JudgedCoil[] healthy = [.. mixed.Where(c => c.Coil.Cause == "none")];
                output.WriteLine(
                    $"healthy first other than none {CauseReport.Share(healthy, c => c.First != "none"):P2} reject {CauseReport.Share(healthy, c => c.Verdict.Kind == VerdictKind.Reject):P2} hold {CauseReport.Share(healthy, c => c.Verdict.Kind == VerdictKind.Hold):P2}"
                );
            }
            output.WriteLine($"{watch.Elapsed}");
            foreach (bool q in new[] { false, true })
            {
                IReadOnlyList<JudgedCoil> healthy = run.Mixed(4 * each, 0, q, 0.02);
                output.WriteLine(
                    $"healthy within 2 %, q {q}: other than none {CauseReport.Share(healthy, c => c.First != "none"):P2}; {string.Join(", ", healthy.GroupBy(c => c.First).Select(g => $"{g.Key} {g.Count()}"))}"
                );
                var off = run.InductanceOff(2 * each, 0.05, q);
                output.WriteLine(
                    $"L off: said {off.Count(o => o.Remarks.Count > 0)} of {off.Count}; coils blamed {off.Sum(o => o.Coils.Count(c => c.First != "none"))} of {off.Sum(o => o.Coils.Count)} {string.Join(", ", off.SelectMany(o => o.Coils).GroupBy(c => c.First).Select(g => $"{g.Key} {g.Count()}"))}"
                );
            }
            output.WriteLine($"{watch.Elapsed}");
        }
    }
}
