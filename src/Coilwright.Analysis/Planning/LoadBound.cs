namespace Coilwright.Analysis.Planning;

/// <summary>A time before which no plan is done, from what each station and each job has to do.</summary>
internal static class LoadBound
{
    /// <summary>The largest over stations (first arrival, work, least set-ups, shortest rest) and jobs.</summary>
    public static long Makespan(PlanModel model)
    {
        (long[] heads, long[] tails) = HeadsAndTails(model);
        long jobs = Enumerable.Range(0, heads.Length).Max(at => heads[at] + Least(model.Steps[at]) + tails[at]);
        return Enumerable.Range(0, model.OnStation.Count).Select(station => OfStation(model, station, heads, tails)).Append(jobs).Max();
    }

    private static long OfStation(PlanModel model, int station, long[] heads, long[] tails)
    {
        int[] own = [.. model.OnStation[station].Where(at => model.Steps[at].On.Count == 1)];
        return own.Length == 0
            ? 0
            : own.Min(at => heads[at]) + own.Sum(at => Least(model.Steps[at])) + SetUps(model, station, own) + own.Min(at => tails[at]);
    }

    /// <summary>Every family but the first must be come to from another, by its shortest set-up at least.</summary>
    private static long SetUps(PlanModel model, int station, int[] own)
    {
        if (model.OnStation[station].Length != own.Length || own.Any(at => model.Steps[at].Family is null))
        {
            return 0;
        }

        int[] one = [.. own.GroupBy(at => model.Steps[at].Family).Select(family => family.First())];
        long[] into =
        [
            .. one.Select(to => one.Where(from => from != to).Select(from => model.SetUp(station, from, to)).DefaultIfEmpty(0).Min()),
        ];
        return into.Sum() - into.Max();
    }

    private static (long[] Heads, long[] Tails) HeadsAndTails(PlanModel model)
    {
        int count = model.Steps.Count;
        (long[] heads, long[] tails) = (new long[count], new long[count]);
        for (int at = 0; at < count; at++)
        {
            ModelStep step = model.Steps[at];
            heads[at] = step.IsFirst ? model.Release(step.Job) : heads[at - 1] + Least(model.Steps[at - 1]) + model.Steps[at - 1].MinGap;
        }

        for (int at = count - 2; at >= 0; at--)
        {
            tails[at] = model.Steps[at].IsLast ? 0 : model.Steps[at].MinGap + Least(model.Steps[at + 1]) + tails[at + 1];
        }

        return (heads, tails);
    }

    private static long Least(ModelStep step) => step.On.Min(option => option.Time);
}
