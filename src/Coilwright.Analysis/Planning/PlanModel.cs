namespace Coilwright.Analysis.Planning;

/// <summary>A job list in whole units of time, its steps in one row.</summary>
internal sealed class PlanModel
{
    private const double ResolutionS = 1e-3;
    private readonly Dictionary<(int Station, string From, string To), long> _setUps = [];
    private readonly long _perUnit;

    public PlanModel(JobList list)
    {
        List = list;
        _perUnit = Math.Max(1, Times(list).Select(Round).Aggregate(0L, GreatestDivisor));
        foreach (SetUpTime setUp in list.SetUps.Where(setUp => setUp.From != setUp.To || setUp.TimeS > 0))
        {
            _setUps[(setUp.Station, setUp.From, setUp.To)] = Units(setUp.TimeS);
        }

        Calendars = [.. list.Stations.Select(station => new Calendar(station.Hours?.Select(Opening).ToArray()))];
        Steps = [.. list.Jobs.SelectMany((job, at) => job.Steps.Select((step, place) => Step(job, at, step, place)))];
        OnStation =
        [
            .. list.Stations.Select((_, station) => Enumerable.Range(0, Steps.Count).Where(at => Steps[at].Takes(station) > 0).ToArray()),
        ];
        Horizon = FindHorizon();
    }

    public JobList List { get; }

    public IReadOnlyList<ModelStep> Steps { get; }

    public IReadOnlyList<Calendar> Calendars { get; }

    /// <summary>Steps that each station can do.</summary>
    public IReadOnlyList<int[]> OnStation { get; }

    /// <summary>No plan that is worth having ends later.</summary>
    public long Horizon { get; }

    public long Units(double seconds) => Round(seconds) / _perUnit;

    public double Seconds(double units) => units * _perUnit * ResolutionS;

    public long Release(int job) => Units(List.Jobs[job].ReleaseS);

    public long? Due(int job) => List.Jobs[job].DueS is { } dueS ? Units(dueS) : null;

    /// <summary>Set-up between two steps that follow each other on a station.</summary>
    public long SetUp(int station, int before, int after) =>
        (Steps[before].Family, Steps[after].Family) is ({ } from, { } to) ? _setUps.GetValueOrDefault((station, from, to)) : 0;

    /// <summary>True when the order of steps on a station changes its set-ups.</summary>
    public bool NeedsSetUps(int station) => _setUps.Any(setUp => setUp.Key.Station == station && setUp.Value > 0) && HasFamilies(station);

    private bool HasFamilies(int station) => OnStation[station].Any(at => Steps[at].Family is not null);

    private ModelStep Step(Job job, int at, JobStep step, int place) =>
        new(at, place, [.. step.On.Select(option => (option.Station, Units(option.TimeS)))])
        {
            Family = step.Family,
            IsLast = place == job.Steps.Count - 1,
            MinGap = Units(step.MinGapS),
            MaxGap = step.MaxGapS is { } most ? Units(most) : null,
        };

    private (long From, long To, long? Every) Opening(OpenHours hours) =>
        (Units(hours.FromS), Units(hours.ToS), hours.EveryS is { } every ? Units(every) : null);

    /// <summary>Twice the time of everything one after another, each as slow as it can be, and of the openings that come once.</summary>
    private long FindHorizon()
    {
        long longestSetUp = _setUps.Values.Append(0).Max(),
            time = List.Jobs.Select((_, job) => Release(job)).Append(0).Max();
        foreach (ModelStep step in Steps)
        {
            time += longestSetUp + step.MinGap;
            time = step.On.Max(option => Calendars[option.Station].Next(time, 0, option.Time) ?? time) + step.On.Max(option => option.Time);
        }

        long once = List.Stations.SelectMany(station => station.Hours ?? []).Select(hours => Units(hours.ToS)).Append(0).Max();
        return (2 * time) + once + 1;
    }

    private static IEnumerable<double> Times(JobList list) =>
        [
            .. list.Jobs.SelectMany(job => job.Steps.SelectMany(step => step.On.Select(option => option.TimeS))),
            .. list.Jobs.SelectMany(job => job.Steps.SelectMany(step => (double[])[step.MinGapS, step.MaxGapS ?? 0])),
            .. list.Jobs.SelectMany(job => (double[])[job.ReleaseS, job.DueS ?? 0]),
            .. list.SetUps.Select(setUp => setUp.TimeS),
            .. list
                .Stations.SelectMany(station => station.Hours ?? [])
                .SelectMany(hours => (double[])[hours.FromS, hours.ToS, hours.EveryS ?? 0]),
        ];

    private static long Round(double seconds) => (long)Math.Round(seconds / ResolutionS);

    private static long GreatestDivisor(long one, long other) => other == 0 ? one : GreatestDivisor(other, one % other);
}
