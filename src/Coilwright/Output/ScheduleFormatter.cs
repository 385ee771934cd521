using System.Globalization;
using Coilwright.Analysis.Planning;
using Coilwright.Formats.Plans;

namespace Coilwright.Output;

/// <summary>Writes a plan for a person: what each station does when, then what is late and why.</summary>
internal static class ScheduleFormatter
{
    public static void Write(TextWriter writer, JobList list, Schedule plan, double seconds)
    {
        if (!plan.Feasible)
        {
            writer.WriteLine("There is no plan:");
            PlanReasons.NoPlan(list, plan, seconds).ToList().ForEach(reason => writer.WriteLine("  " + reason));
            return;
        }

        writer.WriteLine(Head(list, plan));
        foreach (IGrouping<int, ScheduledStep> station in plan.Steps.GroupBy(step => step.Station).OrderBy(station => station.Key))
        {
            WriteStation(writer, list, station);
        }

        foreach (LateJob late in plan.Late)
        {
            writer.WriteLine($"{list.Jobs[late.Job].Name} is late by {PlanTimes.Describe(late.ByS)}: {PlanReasons.Describe(list, late)}");
        }

        if (plan.Late.Count == 0 && list.Jobs.Any(job => job.DueS is not null))
        {
            writer.WriteLine("Nothing is late.");
        }
    }

    private static string Head(JobList list, Schedule plan)
    {
        string done = $"Everything is done after {PlanTimes.Describe(plan.MakespanS)}",
            late = list.Want == PlanObjective.Tardiness ? $"; weighted lateness {PlanTimes.Describe(plan.TardinessS)}" : "",
            best = plan.Optimal ? "no plan is better" : Open(list, plan);
        return $"{done}{late}: {best}.{(plan.Stopped ? " Stopped: the best so far." : "")}";
    }

    private static string Open(JobList list, Schedule plan) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the best lies at {PlanTimes.Describe(plan.BoundS)} or above, at most {plan.Gap(list.Want):P1} below this plan"
        );

    private static void WriteStation(TextWriter writer, JobList list, IGrouping<int, ScheduledStep> station)
    {
        writer.WriteLine(list.Stations[station.Key].Name);
        Table table = new("start", "end", "job", "step", "family");
        foreach (ScheduledStep one in station)
        {
            JobStep step = list.Jobs[one.Job].Steps[one.Step];
            table.Add(PlanTimes.Describe(one.StartS), PlanTimes.Describe(one.EndS), list.Jobs[one.Job].Name, step.Name, step.Family ?? "");
        }

        table.Write(writer);
        writer.WriteLine();
    }
}
