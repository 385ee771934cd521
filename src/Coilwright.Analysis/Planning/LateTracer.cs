namespace Coilwright.Analysis.Planning;

/// <summary>Follows each late job back from its end to the nearest thing that held it up.</summary>
internal sealed class LateTracer(PlanModel model, StationOrders orders, long[] starts)
{
    private readonly int[] _before = orders.Before();

    public IReadOnlyList<LateJob> All() =>
        [
            .. Enumerable
                .Range(0, starts.Length)
                .Where(at => model.Steps[at].IsLast && End(at) > (model.Due(model.Steps[at].Job) ?? long.MaxValue))
                .Select(Trace)
                .OrderByDescending(late => late.ByS),
        ];

    private LateJob Trace(int last)
    {
        int job = model.Steps[last].Job;
        double byS = model.Seconds(End(last) - model.Due(job)!.Value);
        for (int at = last; ; at--)
        {
            ModelStep step = model.Steps[at];
            long ready = step.IsFirst ? model.Release(job) : End(at - 1) + model.Steps[at - 1].MinGap;
            if (starts[at] > ready)
            {
                return Held(at, byS, ready);
            }

            if (step.IsFirst)
            {
                return new LateJob(job, byS, LateCause.OwnWork, step.Place) { UntilS = model.Seconds(starts[at]) };
            }
        }
    }

    private LateJob Held(int at, double byS, long ready)
    {
        (ModelStep step, int station, int before) = (model.Steps[at], orders.StationOf[at], _before[at]);
        LateJob late = new(step.Job, byS, LateCause.Closed, step.Place) { Station = station, UntilS = model.Seconds(starts[at]) };
        if (step is { IsLast: false, MaxGap: { } most } && starts[at] == starts[at + 1] - most - step.Takes(station))
        {
            return late with { Cause = LateCause.LongestGap };
        }

        long setUp = before < 0 ? 0 : model.SetUp(station, before, at);
        bool isBusy = before >= 0 && End(before) + setUp > ready;
        return isBusy ? late with { Cause = LateCause.Busy, Busy = ScheduleBuilder.Step(model, orders, starts, before) } : late;
    }

    private long End(int at) => starts[at] + model.Steps[at].Takes(orders.StationOf[at]);
}
