using Coilwright.Analysis.Planning;

namespace Coilwright.Analysis.Tests.Planning;

/// <summary>What is wrong with a plan, looked at pair by pair in seconds: nothing of the solver's model is used.</summary>
internal static class ScheduleChecker
{
    private const double Hair = 1e-6;

    /// <summary>Every breach in words; none when the plan can be carried out.</summary>
    public static IReadOnlyList<string> Breaches(JobList list, Schedule plan) =>
        [.. Whole(list, plan), .. Jobs(list, plan), .. Stations(list, plan), .. Figures(list, plan)];

    /// <summary>Breaches on stations alone: overlaps, set-ups, hours.</summary>
    public static IReadOnlyList<string> Clashes(JobList list, IReadOnlyList<ScheduledStep> steps) =>
        [.. Stations(list, new Schedule(steps))];

    private static IEnumerable<string> Whole(JobList list, Schedule plan)
    {
        foreach (ScheduledStep one in plan.Steps)
        {
            StepOption[] option = [.. list.Jobs[one.Job].Steps[one.Step].On.Where(on => on.Station == one.Station)];
            if (option.Length != 1 || Math.Abs(one.EndS - one.StartS - option[0].TimeS) > Hair)
            {
                yield return $"{Name(list, one)} is where it cannot be, or takes another time";
            }
        }

        int wanted = list.Jobs.Sum(job => job.Steps.Count),
            distinct = plan.Steps.Select(one => (one.Job, one.Step)).Distinct().Count();
        if (distinct != wanted || plan.Steps.Count != wanted)
        {
            yield return $"{wanted} steps are wanted and {plan.Steps.Count} are planned, {distinct} of them different";
        }
    }

    private static IEnumerable<string> Jobs(JobList list, Schedule plan)
    {
        foreach (ScheduledStep one in plan.Steps)
        {
            if (one.Step == 0 && one.StartS < list.Jobs[one.Job].ReleaseS - Hair)
            {
                yield return $"{Name(list, one)} begins before its release";
            }

            foreach (ScheduledStep next in plan.Steps.Where(next => next.Job == one.Job && next.Step == one.Step + 1))
            {
                JobStep step = list.Jobs[one.Job].Steps[one.Step];
                double gap = next.StartS - one.EndS;
                if (gap < step.MinGapS - Hair || gap > (step.MaxGapS ?? double.PositiveInfinity) + Hair)
                {
                    yield return $"{gap} s after {Name(list, one)}";
                }
            }
        }
    }

    private static IEnumerable<string> Stations(JobList list, Schedule plan)
    {
        foreach (IGrouping<int, ScheduledStep> station in plan.Steps.GroupBy(one => one.Station))
        {
            ScheduledStep[] order = [.. station.OrderBy(one => one.StartS)];
            for (int at = 0; at < order.Length; at++)
            {
                double setUpS = at == 0 ? 0 : SetUpS(list, station.Key, order[at - 1], order[at]);
                if (at > 0 && order[at].StartS < order[at - 1].EndS + setUpS - Hair)
                {
                    yield return $"{Name(list, order[at])} begins before {Name(list, order[at - 1])} has ended and been set up after";
                }

                if (!IsOpen(list.Stations[station.Key].Hours, order[at].StartS - setUpS, order[at].EndS))
                {
                    yield return $"{Name(list, order[at])} lies outside the hours";
                }
            }
        }
    }

    private static IEnumerable<string> Figures(JobList list, Schedule plan)
    {
        double lastS = plan.Steps.Max(one => one.EndS),
            lateS = 0;
        for (int job = 0; job < list.Jobs.Count; job++)
        {
            double endS = plan.Steps.Where(one => one.Job == job).Max(one => one.EndS),
                byS = endS - (list.Jobs[job].DueS ?? endS);
            lateS += list.Jobs[job].Weight * Math.Max(0, byS);
            if (plan.Late.Any(late => late.Job == job) != byS > Hair)
            {
                yield return $"{list.Jobs[job].Name} is late by {byS} s, and is not told rightly";
            }
        }

        if (Math.Abs(lastS - plan.MakespanS) > Hair || Math.Abs(lateS - plan.TardinessS) > Hair * Math.Max(1, lateS))
        {
            yield return $"the plan ends at {lastS} s, late by {lateS} s in all: not as told";
        }

        if (plan.BoundS > plan.ValueS(list.Want) + Hair)
        {
            yield return "the bound lies above the plan";
        }
    }

    private static double SetUpS(JobList list, int station, ScheduledStep before, ScheduledStep after)
    {
        string? from = list.Jobs[before.Job].Steps[before.Step].Family,
            to = list.Jobs[after.Job].Steps[after.Step].Family;
        return list.SetUps.Where(one => one.Station == station && one.From == from && one.To == to).Sum(one => one.TimeS);
    }

    private static bool IsOpen(IReadOnlyList<OpenHours>? hours, double fromS, double toS)
    {
        if (hours is null)
        {
            return true;
        }

        foreach (OpenHours one in hours)
        {
            for (int time = 0; time < (one.EveryS is null ? 1 : 1000); time++)
            {
                double shiftS = time * (one.EveryS ?? 0);
                if (one.FromS + shiftS <= fromS + Hair && toS <= one.ToS + shiftS + Hair)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static string Name(JobList list, ScheduledStep one) => $"{list.Jobs[one.Job].Name}, step {one.Step + 1}";
}
