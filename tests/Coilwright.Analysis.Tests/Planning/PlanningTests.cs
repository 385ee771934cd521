using Coilwright.Analysis.Planning;
using CsCheck;

namespace Coilwright.Analysis.Tests.Planning;

/// <summary>Small made-up lists against every plan that there is, and what a plan must always do.</summary>
public sealed class PlanningTests
{
    private const double PatienceS = 300;

    /// <summary>
    /// Two jobs of one or two steps, or three of one, on two stations, with gaps, families, set-ups, releases, due times and hours.
    /// </summary>
    private static readonly Gen<JobList> s_small =
        from jobs in Gen.OneOf(GenJob(2).Array[2], GenJob(1).Array[3])
        from setUps in Gen.Int[0, 2].Array[4]
        from hours in Gen.Bool
        from want in Gen.Int[0, 1]
        select new JobList(
            [new Station("A") { Hours = hours ? [new OpenHours(1, 6, 7)] : null }, new Station("B")],
            jobs,
            [
                .. from station in Enumerable.Range(0, 2)
                from before in Enumerable.Range(0, 2)
                select new SetUpTime(station, $"F{before}", $"F{1 - before}", setUps[2 * station + before]),
            ],
            (PlanObjective)want
        );

    [Fact]
    public void Small_lists_are_planned_as_well_as_the_best_of_all_plans() =>
        s_small.ForAll(
            list =>
            {
                Schedule plan = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
                double best = new EveryPlan(list).Best();
                Assert.Equal(double.IsFinite(best), plan.Feasible);
                Assert.Equal(plan.Feasible, !plan.ProvedImpossible);
                if (plan.Feasible)
                {
                    Assert.Empty(ScheduleChecker.Breaches(list, plan));
                    Assert.True(plan.Optimal, "not proved");
                    Assert.Equal(best, plan.ValueS(list.Want), 1e-6);
                }
            },
            60
        );

    [Fact]
    public void Stopped_before_it_begins_it_still_has_a_plan()
    {
        foreach (string name in PublishedSchedules.Names)
        {
            JobList list = PublishedSchedules.Read(name);
            Schedule plan = JobPlanner.Plan(list, PatienceS, new CancellationToken(canceled: true));
            Assert.Empty(ScheduleChecker.Breaches(list, plan));
            Assert.True(plan.Stopped && plan.BoundS > 0);
        }
    }

    [Fact]
    public void The_first_plan_of_a_month_keeps_every_rule()
    {
        JobList list = Month(200);
        Schedule plan = JobPlanner.Plan(list, PatienceS, new CancellationToken(canceled: true));
        Assert.Empty(ScheduleChecker.Breaches(list, plan));
    }

    [Fact]
    public void A_longest_gap_that_the_hours_shut_out_is_proved_and_named()
    {
        JobList list = new(
            [
                new Station("Winder") { Hours = [new OpenHours(0, 3600, 86400)] },
                new Station("Pot") { Hours = [new OpenHours(14400, 18000, 86400)] },
            ],
            [
                new Job("free", [new JobStep("wind", [new StepOption(0, 600)])]),
                new Job(
                    "bound",
                    [new JobStep("wind", [new StepOption(0, 600)]) { MaxGapS = 3600 }, new JobStep("pot", [new StepOption(1, 600)])]
                ),
            ],
            []
        );
        Schedule plan = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
        Assert.False(plan.Feasible);
        Assert.True(plan.ProvedImpossible);
        Assert.Equal([1], plan.ImpossibleAlone);
    }

    [Fact]
    public void What_makes_a_job_late_is_the_nearest_thing_that_held_it_up()
    {
        JobStep wind = new("wind", [new StepOption(0, 100)]);
        JobList list = new(
            [new Station("Winder"), new Station("Pot") { Hours = [new OpenHours(500, 900)] }],
            [
                new Job("first", [wind]) { DueS = 100, Weight = 5 },
                new Job("second", [wind]) { DueS = 150 },
                new Job("long", [new JobStep("pot", [new StepOption(1, 300)])]) { DueS = 400 },
                new Job("own", [new JobStep("glue", [new StepOption(2, 100)])]) { DueS = 50 },
            ],
            [],
            PlanObjective.Tardiness
        );
        list = list with { Stations = [.. list.Stations, new Station("Bench")] };
        Schedule plan = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
        Assert.Empty(ScheduleChecker.Breaches(list, plan));
        Assert.Equal(
            [(2, 400.0, LateCause.Closed), (1, 50, LateCause.Busy), (3, 50, LateCause.OwnWork)],
            plan.Late.Select(late => (late.Job, late.ByS, late.Cause))
        );
        Assert.Equal(0, plan.Late[1].Busy!.Value.Job);
    }

    [Fact]
    public void The_checker_sees_each_breach()
    {
        JobStep wind = new("wind", [new StepOption(0, 100)])
        {
            Family = "fine",
            MinGapS = 50,
            MaxGapS = 60,
        };
        JobList list = new(
            [new Station("Winder") { Hours = [new OpenHours(0, 1000)] }, new Station("Pot")],
            [
                new Job("one", [wind, new JobStep("pot", [new StepOption(1, 10)])]),
                new Job("two", [wind with { Family = "thick" }, new JobStep("pot", [new StepOption(1, 10)])]) { ReleaseS = 5 },
            ],
            [new SetUpTime(0, "fine", "thick", 30)]
        );
        Schedule good = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
        Assert.Empty(ScheduleChecker.Breaches(list, good));
        foreach (
            (int job, int step, double startS) in ((int, int, double)[])
                [(1, 0, 110), (1, 0, 950), (0, 1, 120), (0, 1, 300), (1, 0, 0), (0, 0, 20)]
        )
        {
            Schedule bad = good with
            {
                Steps = [.. good.Steps.Select(one => one.Job == job && one.Step == step ? Moved(one, startS) : one)],
            };
            Assert.NotEmpty(ScheduleChecker.Breaches(list, bad));
        }

        Assert.NotEmpty(ScheduleChecker.Breaches(list, good with { Steps = [.. good.Steps.Skip(1)] }));
        Assert.NotEmpty(ScheduleChecker.Breaches(list, good with { BoundS = good.MakespanS + 1 }));
    }

    [Fact(Explicit = true)] // half a minute: what a shop of some size gets in the time that a person waits
    public void A_month_of_200_jobs_with_set_ups_and_cures_comes_within_a_tenth_of_its_bound()
    {
        JobList list = Month(200);
        Schedule first = JobPlanner.Plan(list, 20, new CancellationToken(canceled: true)),
            plan = JobPlanner.Plan(list, 20, TestContext.Current.CancellationToken);
        Assert.Empty(ScheduleChecker.Breaches(list, plan));
        string found = FormattableString.Invariant(
            $"first {first.MakespanS / 3600:F2} h, then {plan.MakespanS / 3600:F2} h, bound {plan.BoundS / 3600:F2} h"
        );
        Assert.True(plan.Gap(list.Want) <= 0.1, found);
        TestContext.Current.SendDiagnosticMessage(found);
    }

    /// <summary>
    /// Wind on one of two winders with set-ups by wire, pot after a rest, assemble after a cure; working days of eight hours.
    /// </summary>
    private static JobList Month(int jobs)
    {
        OpenHours[] day = [new OpenHours(0, 8 * 3600, 24 * 3600)];
        SetUpTime[] setUps =
        [
            .. from station in Enumerable.Range(0, 2)
            from before in Enumerable.Range(0, 4)
            from after in Enumerable.Range(0, 4)
            where before != after
            select new SetUpTime(station, $"W{before}", $"W{after}", 60 * (10 + 5 * ((before + 2 * after + station) % 3))),
        ];
        return new JobList(
            [
                new Station("Winder 1") { Hours = day },
                new Station("Winder 2") { Hours = day },
                new Station("Pot") { Hours = day },
                new Station("Bench") { Hours = day },
            ],
            [.. Enumerable.Range(0, jobs).Select(Batch)],
            setUps
        );
    }

    private static Job Batch(int at)
    {
        double minutes = 40 + 7 * (at * 37 % 11);
        return new Job(
            $"B-{at}",
            [
                new JobStep("wind", [new StepOption(0, 60 * (minutes + 6)), new StepOption(1, 60 * minutes)])
                {
                    Family = $"W{at * 13 % 4}",
                    MinGapS = 900,
                },
                new JobStep("pot", [new StepOption(2, 60 * (8 + (at % 5)))]) { MinGapS = 4 * 3600 },
                new JobStep("assemble", [new StepOption(3, 60 * (15 + (at * 7 % 9)))]),
            ]
        )
        {
            ReleaseS = at % 20 * 3600.0,
        };
    }

    private static Gen<Job> GenJob(int mostSteps) =>
        from steps in GenStep().Array[1, mostSteps]
        from release in Gen.Int[0, 2]
        from due in Gen.Int[0, 6]
        from weight in Gen.Int[1, 3]
        select new Job("J", steps)
        {
            ReleaseS = release,
            DueS = release + due,
            Weight = weight,
        };

    private static Gen<JobStep> GenStep() =>
        from first in Gen.Int[1, 3]
        from second in Gen.Int[1, 3]
        from place in Gen.Int[0, 2]
        from family in Gen.Int[0, 2]
        from gap in Gen.Int[0, 1]
        from more in Gen.Int[0, 4]
        select new JobStep(
            "S",
            [
                .. ((StepOption[])[new StepOption(0, first), new StepOption(1, second)]).Where(option =>
                    place == 2 || option.Station == place
                ),
            ]
        )
        {
            Family = family == 2 ? null : $"F{family}",
            MinGapS = gap,
            MaxGapS = more > 2 ? null : gap + more,
        };

    private static ScheduledStep Moved(ScheduledStep one, double startS) =>
        one with
        {
            StartS = startS,
            EndS = startS + one.EndS - one.StartS,
        };
}
