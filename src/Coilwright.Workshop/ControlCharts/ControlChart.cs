using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>The charts of a run of coils.</summary>
public sealed record ControlChart
{
    public const string Individuals = "single coils",
        MovingRanges = "moving range",
        Average = "moving average",
        Sums = "cumulative sums",
        Means = "means of subgroups",
        Spreads = "spread within subgroups";

    /// <summary>The line of the alarms that stands for all run rules at once.</summary>
    public const string Together = "all these rules together";

    public required ChartSettings Question { get; init; }
    public required IReadOnlyList<ChartedCoil> Points { get; init; }

    /// <summary>The recipe's limits; null when it sets none.</summary>
    public Band? Band { get; init; }

    /// <summary>From how many coils the limits of the charts were taken.</summary>
    public required int LimitsFrom { get; init; }
    public required double Centre { get; init; }

    /// <summary>Sigma from the moving range of those coils.</summary>
    public required double Sigma { get; init; }
    public required IReadOnlyList<ChartSeries> Charts { get; init; }
    public required IReadOnlyList<ChartSignal> Signals { get; init; }
    public required IReadOnlyList<FalseAlarmRate> Alarms { get; init; }
    public IReadOnlyList<ChartCapabilityIndex> Capability { get; init; } = [];

    /// <summary>Why capability is missing, or what to know about it; empty when nothing.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Coils left out because they were rejected or their value is in doubt.</summary>
    public int LeftOut => Points.Count(point => point.LeftOut);

    /// <summary>The letter that marks a rule of a chart: A for its first rule, and so on.</summary>
    public string LetterOf(string chart, string rule)
    {
        int place = Alarms.Where(alarm => alarm.Chart == chart && alarm.Rule != Together).ToList().FindIndex(alarm => alarm.Rule == rule);
        return place < 0 ? "" : ((char)('A' + place)).ToString();
    }

    /// <summary>The signals, each unbroken run of one rule told once.</summary>
    public IReadOnlyList<SignalRun> SignalRuns()
    {
        List<SignalRun> spells = [];
        foreach (ChartSeries chart in Charts)
        {
            Dictionary<int, int> pointOf = chart
                .Places.Select((place, point) => (place, point))
                .ToDictionary(one => one.place, one => one.point);
            foreach (
                IGrouping<string, ChartSignal> rule in Signals.Where(signal => signal.Chart == chart.Name).GroupBy(signal => signal.Rule)
            )
            {
                ChartSignal[] found = [.. rule];
                for (int from = 0, to = 0; from < found.Length; from = ++to)
                {
                    while (to + 1 < found.Length && pointOf[found[to + 1].Index] == pointOf[found[to].Index] + 1)
                    {
                        to++;
                    }

                    spells.Add(new SignalRun(chart.Name, rule.Key, LetterOf(chart.Name, rule.Key), found[from], found[to], to - from + 1));
                }
            }
        }

        return [.. spells.OrderBy(spell => spell.First.Index)];
    }
}
