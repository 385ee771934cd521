using Coilwright.Analysis.Planning;

namespace Coilwright.Analysis.Tests.Planning;

/// <summary>Plans against optima that others have proved.</summary>
public sealed class PublishedSchedulesTests
{
    /// <summary>Long enough that what is proved does not hang on the machine.</summary>
    private const double PatienceS = 300;

    /// <summary>Ten jobs on ten stations: a minute or more on a busy machine.</summary>
    private const string Long = "abz5";

    [Fact]
    public void Every_published_instance_but_the_longest_is_solved_to_its_proven_optimum()
    {
        string[] names = [.. PublishedSchedules.Names.Except([Long])];
        Assert.Equal(13, names.Length);
        foreach (IGrouping<(string Kind, string Standing), string> kind in names.GroupBy(PublishedSchedules.Kind))
        {
            Evidence check = Evidence.Outside(
                $"Plans of least makespan, {kind.Key.Kind}: {string.Join(", ", kind)}",
                "proven optima: tests/Reference/schedules [Schedules]",
                kind.Key.Standing,
                "exact"
            );
            foreach (string name in kind)
            {
                JobList list = PublishedSchedules.Read(name);
                Schedule plan = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
                Assert.Empty(ScheduleChecker.Breaches(list, plan));
                check
                    .Same(plan.Optimal, true, name)
                    .Within(plan.MakespanS / PublishedSchedules.UnitS, PublishedSchedules.Optimum(name), 1e-9, at: name)
                    .Within(plan.BoundS / PublishedSchedules.UnitS, PublishedSchedules.Optimum(name), 1e-6, at: name);
            }

            check.Record();
        }
    }

    [Fact(Explicit = true)]
    public void Ten_jobs_on_ten_stations_are_solved_to_the_proven_optimum()
    {
        JobList list = PublishedSchedules.Read(Long);
        Schedule plan = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
        Assert.Empty(ScheduleChecker.Breaches(list, plan));
        Assert.True(plan.Optimal);
        Assert.Equal(PublishedSchedules.Optimum(Long), plan.MakespanS / PublishedSchedules.UnitS, 1e-9);
    }

    [Fact]
    public void The_order_of_least_set_ups_is_the_shortest_open_tour()
    {
        (JobList list, int optimum) = PublishedSchedules.SetUps();
        Schedule plan = JobPlanner.Plan(list, PatienceS, TestContext.Current.CancellationToken);
        Assert.Empty(ScheduleChecker.Breaches(list, plan));
        Evidence
            .Outside(
                "Plan of least set-ups on one station: br17, open tour",
                "matrix of TSPLIB, optimum by exact dynamic programming: tests/Reference/schedules [Schedules]",
                "derived",
                "exact"
            )
            .Same(plan.Optimal, true)
            .Within(plan.MakespanS / PublishedSchedules.UnitS - list.Jobs.Count, optimum, 1e-9)
            .Record();
    }
}
