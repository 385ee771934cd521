namespace Coilwright.Analysis.Planning;

/// <summary>A plan in seconds, with its bound and what makes jobs late.</summary>
internal static class ScheduleBuilder
{
    public static Schedule Build(PlanModel model, StationOrders orders, long[] starts, double solverBoundS)
    {
        PlanObjective want = model.List.Want;
        Schedule plan = new([.. Enumerable.Range(0, starts.Length).OrderBy(at => starts[at]).Select(at => Step(model, orders, starts, at))])
        {
            TardinessS = Tardiness(model, orders, starts),
            Late = new LateTracer(model, orders, starts).All(),
        };
        double ownBoundS = want == PlanObjective.Makespan ? model.Seconds(LoadBound.Makespan(model)) : 0,
            boundS = Math.Min(plan.ValueS(want), Math.Max(ownBoundS, solverBoundS));
        return plan with { BoundS = boundS, Optimal = plan.ValueS(want) - boundS <= 1e-9 * Math.Max(1, boundS) };
    }

    public static ScheduledStep Step(PlanModel model, StationOrders orders, long[] starts, int at)
    {
        ModelStep step = model.Steps[at];
        int station = orders.StationOf[at];
        return new ScheduledStep(
            Job: step.Job,
            Step: step.Place,
            Station: station,
            StartS: model.Seconds(starts[at]),
            EndS: model.Seconds(starts[at] + step.Takes(station))
        );
    }

    private static double Tardiness(PlanModel model, StationOrders orders, long[] starts) =>
        Enumerable
            .Range(0, starts.Length)
            .Where(at => model.Steps[at].IsLast)
            .Sum(at =>
            {
                (int job, long end) = (model.Steps[at].Job, starts[at] + model.Steps[at].Takes(orders.StationOf[at]));
                return model.List.Jobs[job].Weight * model.Seconds(Math.Max(0, end - (model.Due(job) ?? end)));
            });
}
