using Google.OrTools.Sat;

namespace Coilwright.Analysis.Planning;

/// <summary>
/// Plans jobs on stations: a first plan at once, then better ones until it is proved that there is none, or the time is over.
/// </summary>
/// <remarks>
/// Search by Google OR-Tools CP-SAT [OrTools], with a seed. The found orders are timed anew as early as they allow, so that two searches
/// that find the same orders give the same plan. On two workers a search that ends by its time may end at another plan next time; what is
/// proved stays.
/// </remarks>
public static class JobPlanner
{
    private const int Workers = 2;
    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(100);

    /// <summary>The best plan found.</summary>
    /// <param name="list">What is to be planned; every station and time is as <see cref="JobList"/> says.</param>
    /// <param name="seconds">Longest search, s, above zero.</param>
    /// <param name="cancel">Ends the search; the best plan so far is the answer.</param>
    public static Schedule Plan(JobList list, double seconds, CancellationToken cancel)
    {
        PlanModel model = new(list);
        (StationOrders Orders, long[] Starts)? first = FirstPlan.Find(model);
        ConstraintModel constraints = new(model);
        if (first is { } plan)
        {
            constraints.Hint(plan.Orders, plan.Starts);
        }

        using CpSolver solver = new();
        CpSolverStatus status = Search(solver, constraints.Constraints, seconds, cancel);
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
        {
            StationOrders orders = constraints.Read(solver);
            first = (orders, EarliestStarts.Find(model, orders)!);
        }

        double solverBoundS = status == CpSolverStatus.Unknown ? 0 : solver.BestObjectiveBound * constraints.SecondsPerObjective;
        return first is { } best
            ? ScheduleBuilder.Build(model, best.Orders, best.Starts, solverBoundS) with
            {
                Stopped = cancel.IsCancellationRequested,
            }
            : Impossible(list, status == CpSolverStatus.Infeasible, cancel);
    }

    private static CpSolverStatus Search(CpSolver solver, CpModel constraints, double seconds, CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested)
        {
            return CpSolverStatus.Unknown;
        }

        // Ctrl+C is the program's own to handle: the library's handler would end the process in the middle of its work.
        solver.StringParameters = FormattableString.Invariant(
            $"max_time_in_seconds:{seconds:0.###},num_workers:{Workers},random_seed:1,catch_sigint_signal:false"
        );
        // A stop that comes before the search has begun is lost, so it is given again and again.
        using Timer stop = new(
            _ =>
            {
                if (cancel.IsCancellationRequested)
                {
                    solver.StopSearch();
                }
            },
            null,
            s_look,
            s_look
        );
        return solver.Solve(constraints);
    }

    private static Schedule Impossible(JobList list, bool proved, CancellationToken cancel) =>
        new([])
        {
            ProvedImpossible = proved,
            Stopped = cancel.IsCancellationRequested,
            ImpossibleAlone = proved ? [.. Enumerable.Range(0, list.Jobs.Count).Where(job => !CanAlone(list, job, cancel))] : [],
        };

    private static bool CanAlone(JobList list, int job, CancellationToken cancel) =>
        list.Jobs.Count > 1 && !Plan(list with { Jobs = [list.Jobs[job]] }, seconds: 1, cancel).ProvedImpossible;
}
