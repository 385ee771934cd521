namespace Coilwright.Analysis.Planning;

/// <summary>A plan at once: whatever can begin first is done first; job by job where that breaks a longest gap.</summary>
internal static class FirstPlan
{
    /// <summary>Orders and starts; null when neither way gives a plan.</summary>
    public static (StationOrders Orders, long[] Starts)? Find(PlanModel model)
    {
        foreach (StationOrders orders in (StationOrders[])[Dispatch(model), JobByJob(model)])
        {
            if (EarliestStarts.Find(model, orders) is { } starts)
            {
                return (orders, starts);
            }
        }

        return null;
    }

    /// <summary>The step that can begin first, again and again; the more pressing job among equals.</summary>
    private static StationOrders Dispatch(PlanModel model)
    {
        DispatchState state = new(model);
        for (int done = 0; done < model.Steps.Count; done++)
        {
            state.Take();
        }

        return state.Orders;
    }

    private static StationOrders JobByJob(PlanModel model)
    {
        int[] stationOf = [.. model.Steps.Select(step => step.On.MinBy(option => option.Time).Station)];
        long[] rank = new long[stationOf.Length];
        int[] jobs =
        [
            .. Enumerable.Range(0, model.List.Jobs.Count).OrderBy(job => model.Release(job)).ThenBy(job => model.Due(job) ?? long.MaxValue),
        ];
        for (int at = 0; at < rank.Length; at++)
        {
            rank[at] = ((long)Array.IndexOf(jobs, model.Steps[at].Job) * rank.Length) + at;
        }

        return StationOrders.From(model, stationOf, rank);
    }
}
