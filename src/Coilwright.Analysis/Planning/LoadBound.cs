namespace Coilwright.Analysis.Planning;

/// <summary>A time before which no plan is done, from what each job and each group of stations has to do in its hours.</summary>
/// <remarks>
/// Steps that can be done on a group of stations and nowhere else: none begins before the first can arrive; the group must be open for
/// their work and their least set-ups; and the job of whichever of them ends last has its other steps still to do (derived).
/// </remarks>
internal sealed class LoadBound
{
    private readonly PlanModel _model;
    private readonly long[] _heads;

    private LoadBound(PlanModel model)
    {
        _model = model;
        _heads = new long[model.Steps.Count];
        for (int at = 0; at < _heads.Length; at++)
        {
            ModelStep step = model.Steps[at];
            long ready = step.IsFirst ? model.Release(step.Job) : EarliestEnd(at - 1, _heads[at - 1]) + model.Steps[at - 1].MinGap;
            _heads[at] = step.On.Min(option => model.Calendars[option.Station].Next(ready, 0, option.Time) ?? model.Horizon);
        }
    }

    /// <summary>The largest bound of all jobs and groups; never above <see cref="PlanModel.Horizon"/>.</summary>
    public static long Makespan(PlanModel model)
    {
        LoadBound bound = new(model);
        long jobs = Enumerable
            .Range(0, model.Steps.Count)
            .Where(at => model.Steps[at].IsLast)
            .Max(at => bound.EarliestEnd(at, bound._heads[at]));
        IEnumerable<int[]> groups = model
            .Steps.Select(step => step.On.Select(option => option.Station).Order().ToArray())
            .DistinctBy(group => string.Join(' ', group));
        return Math.Min(model.Horizon, groups.Select(bound.OfGroup).Append(jobs).Max());
    }

    private long OfGroup(int[] group)
    {
        int[] own = [.. Enumerable.Range(0, _heads.Length).Where(at => _model.Steps[at].On.All(option => group.Contains(option.Station)))];
        long from = own.Min(at => _heads[at]),
            need = own.Sum(at => _model.Steps[at].On.Min(option => option.Time)) + SetUps(group, own),
            done = FirstTime(from, time => group.Sum(station => _model.Calendars[station].OpenTime(from, time)) >= need);
        return own.Min(at => JobEnd(at, done));
    }

    /// <summary>Families beyond one for each station must be come to from another, by the shortest of their set-ups at least.</summary>
    private long SetUps(int[] group, int[] own)
    {
        bool others = group.Any(station => _model.OnStation[station].Any(at => !own.Contains(at)));
        if (others || own.Any(at => _model.Steps[at].Family is null))
        {
            return 0;
        }

        int[] one = [.. own.GroupBy(at => _model.Steps[at].Family).Select(family => family.First())];
        IEnumerable<long> into = one.Select(to =>
            group.SelectMany(_ => one.Where(from => from != to), (station, from) => _model.SetUp(station, from, to)).DefaultIfEmpty(0).Min()
        );
        return into.Order().Take(Math.Max(0, one.Length - group.Length)).Sum();
    }

    /// <summary>When a job is done at the earliest if one of its steps ends at a time.</summary>
    private long JobEnd(int at, long end)
    {
        for (int next = at; !_model.Steps[next].IsLast; next++)
        {
            end = EarliestEnd(next + 1, end + _model.Steps[next].MinGap);
        }

        return end;
    }

    private long EarliestEnd(int at, long from) =>
        _model.Steps[at].On.Min(option => (_model.Calendars[option.Station].Next(from, 0, option.Time) ?? _model.Horizon) + option.Time);

    private long FirstTime(long from, Func<long, bool> isEnough)
    {
        (long low, long high) = (from, _model.Horizon);
        while (low < high)
        {
            long middle = low + (high - low) / 2;
            (low, high) = isEnough(middle) ? (low, middle) : (middle + 1, high);
        }

        return low;
    }
}
