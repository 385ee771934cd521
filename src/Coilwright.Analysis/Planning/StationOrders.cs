namespace Coilwright.Analysis.Planning;

/// <summary>Which station does each step, and in which order each station does its own.</summary>
/// <param name="StationOf">Station of each step.</param>
/// <param name="Orders">Steps of each station, in order.</param>
internal sealed record StationOrders(int[] StationOf, IReadOnlyList<int>[] Orders)
{
    /// <summary>The step before each on its station; −1 for a first.</summary>
    public int[] Before()
    {
        int[] before = [.. StationOf.Select(_ => -1)];
        foreach (IReadOnlyList<int> order in Orders)
        {
            for (int at = 1; at < order.Count; at++)
            {
                before[order[at]] = order[at - 1];
            }
        }

        return before;
    }

    /// <summary>The orders that starts make.</summary>
    public static StationOrders From(PlanModel model, int[] stationOf, long[] starts) =>
        new(
            stationOf,
            [
                .. model.OnStation.Select(
                    (steps, station) =>
                        (IReadOnlyList<int>)[.. steps.Where(step => stationOf[step] == station).OrderBy(step => starts[step])]
                ),
            ]
        );
}
