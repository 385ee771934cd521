using Coilwright.Analysis.Planning;

namespace Coilwright.Analysis.Tests.Planning;

/// <summary>Plans against optima that others have proved.</summary>
public sealed class PublishedSchedulesTests
{
    /// <summary>Long enough that what is proved does not hang on the machine.</summary>
    private const double PatienceS = 300;

    [Fact]
    public void Every_published_instance_is_solved_to_its_proven_optimum()
    {
        Assert.Equal(14, PublishedSchedules.Names.Count);
        foreach (IGrouping<string, string> kind in PublishedSchedules.Names.GroupBy(PublishedSchedules.Kind))
        {
            Evidence check = Evidence.Outside(
                $"Plans of least makespan, {kind.Key}: {string.Join(", ", kind)}",
                "proven optima: tests/Reference/schedules [Schedules]",
                "read",
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
