using System.Globalization;
using Coilwright.Analysis.Planning;

namespace Coilwright.Formats.Plans;

/// <summary>Why a job is late, and why there is no plan, in words.</summary>
public static class PlanReasons
{
    /// <summary>What makes a job late, in one sentence without its full stop.</summary>
    /// <param name="list">What was planned.</param>
    /// <param name="late">The job.</param>
    public static string Describe(JobList list, LateJob late)
    {
        Job job = list.Jobs[late.Job];
        string step = job.Steps[late.Step].Name,
            until = PlanTimes.Describe(late.UntilS);
        return late.Cause switch
        {
            LateCause.Busy => Busy(list, late),
            LateCause.Closed =>
                $"{list.Stations[late.Station!.Value].Name} is closed, or closes too soon, until {until}, when {step} can begin",
            LateCause.LongestGap => $"{step} waits until {until}, so that what follows comes within its longest gap of {Gap(job, late)}",
            _ => $"from its release at {PlanTimes.Describe(job.ReleaseS)} on it never waits: its own steps and gaps take as long",
        };
    }

    /// <summary>Why there is no plan, as far as that is known.</summary>
    /// <param name="list">What was to be planned.</param>
    /// <param name="plan">The answer without a plan.</param>
    /// <param name="seconds">How long was searched, s.</param>
    public static IReadOnlyList<string> NoPlan(JobList list, Schedule plan, double seconds)
    {
        if (!plan.ProvedImpossible)
        {
            return
            [
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"no plan was found in {seconds:0.#} s, and none was ruled out: give more --seconds"
                ),
            ];
        }

        string[] alone = [.. plan.ImpossibleAlone.Select(job => list.Jobs[job].Name)];
        return alone.Length > 0
            ?
            [
                .. alone.Select(name =>
                    $"{name} cannot be done even alone: its longest gaps and the hours of its stations shut each other out"
                ),
            ]
            : ["no plan keeps every longest gap within the stations' hours: lengthen a gap, open a station longer or plan fewer jobs"];
    }

    private static string Busy(JobList list, LateJob late)
    {
        ScheduledStep busy = late.Busy!.Value;
        Job other = list.Jobs[busy.Job];
        string setUp =
            late.UntilS > busy.EndS
                ? $", and free for {list.Jobs[late.Job].Steps[late.Step].Name} from {PlanTimes.Describe(late.UntilS)} on"
                : "";
        string work = $"{other.Steps[busy.Step].Name} of {other.Name}";
        return $"{list.Stations[busy.Station].Name} is busy until {PlanTimes.Describe(busy.EndS)} with {work}{setUp}";
    }

    private static string Gap(Job job, LateJob late) => PlanTimes.Describe(job.Steps[late.Step].MaxGapS ?? 0);
}
