namespace Coilwright.Analysis.Planning;

/// <summary>The earliest starts that given orders allow: the least fixed point of what each step waits for.</summary>
/// <remarks>
/// Every rule lifts a start as others rise and none lowers it, so lifting from the releases on ends at starts that no plan with these
/// orders comes before; where a longest gap can never be kept they rise beyond every bound instead.
/// </remarks>
internal static class EarliestStarts
{
    /// <summary>The starts; null when the orders allow none.</summary>
    public static long[]? Find(PlanModel model, StationOrders orders)
    {
        (long[] starts, int[] before) = (new long[model.Steps.Count], orders.Before());
        for (bool moved = true; moved; )
        {
            moved = false;
            for (int at = 0; at < starts.Length; at++)
            {
                if (Wanted(model, orders, starts, before, at) is not { } wanted || wanted > model.Horizon)
                {
                    return null;
                }

                moved |= wanted > starts[at];
                starts[at] = Math.Max(starts[at], wanted);
            }
        }

        return starts;
    }

    private static long? Wanted(PlanModel model, StationOrders orders, long[] starts, int[] before, int at)
    {
        (ModelStep step, int station) = (model.Steps[at], orders.StationOf[at]);
        long time = step.Takes(station),
            from = step.IsFirst ? model.Release(step.Job) : End(model, orders, starts, at - 1) + model.Steps[at - 1].MinGap,
            setUp = 0;
        if (step is { IsLast: false, MaxGap: { } most })
        {
            from = Math.Max(from, starts[at + 1] - most - time);
        }

        if (before[at] >= 0)
        {
            setUp = model.SetUp(station, before[at], at);
            from = Math.Max(from, End(model, orders, starts, before[at]) + setUp);
        }

        return model.Calendars[station].Next(from, setUp, time);
    }

    private static long End(PlanModel model, StationOrders orders, long[] starts, int at) =>
        starts[at] + model.Steps[at].Takes(orders.StationOf[at]);
}
