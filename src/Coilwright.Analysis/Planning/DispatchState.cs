namespace Coilwright.Analysis.Planning;

/// <summary>What has been done so far while steps are taken one by one.</summary>
internal sealed class DispatchState
{
    private readonly PlanModel _model;
    private readonly int[] _next;
    private readonly long[] _ready;
    private readonly long[] _left;
    private readonly long[] _free;
    private readonly int[] _last;
    private readonly List<int>[] _orders;
    private readonly int[] _stationOf;

    public DispatchState(PlanModel model)
    {
        _model = model;
        int jobs = model.List.Jobs.Count,
            stations = model.List.Stations.Count;
        _next = new int[jobs];
        _left = new long[jobs];
        for (int at = model.Steps.Count - 1; at >= 0; at--)
        {
            _next[model.Steps[at].Job] = at;
            _left[model.Steps[at].Job] += model.Steps[at].On.Min(option => option.Time) + model.Steps[at].MinGap;
        }

        _ready = [.. Enumerable.Range(0, jobs).Select(model.Release)];
        _free = new long[stations];
        _last = [.. Enumerable.Repeat(-1, stations)];
        _orders = [.. Enumerable.Range(0, stations).Select(_ => new List<int>())];
        _stationOf = new int[model.Steps.Count];
    }

    public StationOrders Orders => new(_stationOf, [.. _orders]);

    public void Take()
    {
        (int job, int station, long start, _) = Enumerable
            .Range(0, _next.Length)
            .Where(job => _next[job] >= 0)
            .SelectMany(Choices)
            .MinBy(one => (one.Start, one.Press));
        int at = _next[job];
        ModelStep step = _model.Steps[at];
        long end = start + step.Takes(station);
        (_free[station], _last[station], _stationOf[at]) = (end, at, station);
        _orders[station].Add(at);
        _left[job] -= step.On.Min(option => option.Time) + step.MinGap;
        (_ready[job], _next[job]) = (end + step.MinGap, step.IsLast ? -1 : at + 1);
    }

    /// <summary>Where the next step of a job could be done, when, and how little time the job has to spare.</summary>
    private IEnumerable<(int Job, int Station, long Start, long Press)> Choices(int job)
    {
        int at = _next[job];
        foreach ((int station, long time) in _model.Steps[at].On)
        {
            long setUp = _last[station] < 0 ? 0 : _model.SetUp(station, _last[station], at);
            long? start = _model.Calendars[station].Next(Math.Max(_ready[job], _free[station] + setUp), setUp, time);
            long slack = (_model.List.Want == PlanObjective.Tardiness ? _model.Due(job) ?? _model.Horizon : 0) - _left[job];
            yield return (job, station, start ?? _model.Horizon, slack);
        }
    }
}
