using Coilwright.Analysis.Charts;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>What a signal says has happened to a run.</summary>
public enum SignalSense
{
    /// <summary>One coil stands apart from the rest.</summary>
    OneCoil,

    /// <summary>The level of the run has moved.</summary>
    Shift,

    /// <summary>The level moves on from coil to coil.</summary>
    Trend,

    /// <summary>Coils lie further from each other than they did.</summary>
    Wider,

    /// <summary>Two streams take turns, as two winders or two spools do.</summary>
    TwoStreams,

    /// <summary>Coils lie closer to the middle than the limits expect.</summary>
    TooClose,
}

/// <summary>The newest signal of a run: what it says, since when, how far off the coils are, and what to do.</summary>
/// <param name="Run">The signal.</param>
/// <param name="Sense">What it says.</param>
/// <param name="OffSi">How far the mean of its coils lies from the centre line, SI.</param>
/// <param name="Do">What to do, a sentence. Common practice, no source.</param>
public sealed record ChartAdvice(SignalRun Run, SignalSense Sense, double OffSi, string Do)
{
    /// <summary>Rules that look back over so many points.</summary>
    private static readonly Dictionary<string, int> s_points = new(StringComparer.Ordinal)
    {
        [RunRules.TwoOfThree] = 3,
        [RunRules.FourOfFive] = 5,
        [RunRules.EightOnOneSide] = 8,
        [RunRules.NineOnOneSide] = 9,
        [RunRules.SixTrending] = 6,
        [RunRules.FourteenAlternating] = 14,
        [RunRules.FifteenWithin] = 15,
        [RunRules.EightOutside] = 8,
    };

    /// <summary>The advice for the newest signal; null where nothing signals.</summary>
    public static ChartAdvice? Of(ControlChart chart)
    {
        string[] order = [.. chart.Charts.Select(one => one.Name)];
        SignalRun? newest = chart
            .SignalRuns()
            .OrderByDescending(run => run.Last.Index)
            .ThenBy(run => Array.IndexOf(order, run.Chart))
            .FirstOrDefault();
        if (newest is null)
        {
            return null;
        }

        SignalSense sense = SenseOf(newest);
        return new ChartAdvice(newest, sense, Off(chart, newest), DoFor(sense));
    }

    private static SignalSense SenseOf(SignalRun run) =>
        (run.Chart, run.Rule) switch
        {
            (ControlChart.MovingRanges or ControlChart.Spreads, _) => SignalSense.Wider,
            (_, RunRules.SixTrending) => SignalSense.Trend,
            (_, RunRules.FourteenAlternating or RunRules.EightOutside) => SignalSense.TwoStreams,
            (_, RunRules.FifteenWithin) => SignalSense.TooClose,
            (ControlChart.Individuals, RunRules.BeyondThree) => SignalSense.OneCoil,
            _ => SignalSense.Shift,
        };

    /// <summary>The coils that the signal rests on, against the centre line.</summary>
    private static double Off(ControlChart chart, SignalRun run)
    {
        int first = Math.Max(0, run.First.Index - s_points.GetValueOrDefault(run.Rule, 1) + 1);
        double[] values =
        [
            .. chart.Points.Skip(first).Take(run.Last.Index - first + 1).Where(point => !point.LeftOut).Select(point => point.Value),
        ];
        return values.Length == 0 ? 0 : values.Average() - chart.Centre;
    }

    private static string DoFor(SignalSense sense) =>
        sense switch
        {
            SignalSense.OneCoil => "read that coil again, cold, with the clips on bare copper; if it stays, look for a joint or the count",
            SignalSense.Trend =>
                "stop and look for what goes on changing: the room and the wire warming up, the brake, a spool that runs out",
            SignalSense.Wider => "look at what differs from coil to coil: tension, how the clips sit, who winds, joints",
            SignalSense.TwoStreams => "draw each winder, spool and person by itself: two streams lie on one chart",
            SignalSense.TooClose => "nothing is wrong with the coils: the limits are too wide for them, take them anew",
            _ => "check temperature and meter zero, then the counter, then measure 10 m of the spool",
        };
}
