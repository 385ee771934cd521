using System.Globalization;
using Coilwright.Analysis.Planning;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Plans;

/// <summary>What only the whole list can show.</summary>
internal static class JobChecks
{
    public static void Check(JsonFields fields, JobList list)
    {
        int steps = list.Jobs.Sum(job => job.Steps.Count);
        if (steps > JobsReader.MostSteps)
        {
            fields.Problems.Add(
                "jobs",
                "there are too many steps for one plan",
                string.Create(CultureInfo.InvariantCulture, $"{steps} steps"),
                string.Create(CultureInfo.InvariantCulture, $"1 to {JobsReader.MostSteps}")
            );
        }

        CheckSetUps(fields, list);
        for (int job = 0; job < list.Jobs.Count; job++)
        {
            for (int step = 0; step < list.Jobs[job].Steps.Count; step++)
            {
                string path = string.Create(CultureInfo.InvariantCulture, $"jobs[{job}].steps[{step}]");
                CheckFamily(fields, list, list.Jobs[job].Steps[step], path);
                CheckHours(fields, list, list.Jobs[job].Steps[step], path);
            }
        }
    }

    private static void CheckSetUps(JsonFields fields, JobList list)
    {
        HashSet<(int, string, string)> known = [];
        for (int at = 0; at < list.SetUps.Count; at++)
        {
            SetUpTime one = list.SetUps[at];
            if (!known.Add((one.Station, one.From, one.To)))
            {
                fields.Problems.Add(
                    string.Create(CultureInfo.InvariantCulture, $"setups[{at}]"),
                    "this set-up stands above already; keep one of them",
                    $"{list.Stations[one.Station].Name}, from {one.From} to {one.To}"
                );
            }
        }
    }

    /// <summary>Where a station has set-ups, a family that none of them names is most likely a slip.</summary>
    private static void CheckFamily(JsonFields fields, JobList list, JobStep step, string path)
    {
        if (step.Family is not { } family)
        {
            return;
        }

        foreach (int station in step.On.Select(option => option.Station))
        {
            string[] known =
            [
                .. list.SetUps.Where(one => one.Station == station).SelectMany(one => (string[])[one.From, one.To]).Distinct(),
            ];
            if (known.Length > 0 && !known.Contains(family))
            {
                fields.Problems.Add(
                    path + ".family",
                    $"{list.Stations[station].Name} has set-ups, and none from or to this family",
                    $"\"{family}\"",
                    string.Join(", ", known.Order(StringComparer.Ordinal))
                );
            }
        }
    }

    private static void CheckHours(JsonFields fields, JobList list, JobStep step, string path)
    {
        if (step.On.All(option => option.TimeS > LongestOpeningS(list, option)))
        {
            fields.Problems.Add(
                path + ".on",
                "no opening of its stations is long enough; a step is done in one go",
                PlanTimes.Describe(step.On.Min(option => option.TimeS)),
                "up to " + PlanTimes.Describe(step.On.Max(option => LongestOpeningS(list, option)))
            );
        }
    }

    private static double LongestOpeningS(JobList list, StepOption option) =>
        list.Stations[option.Station].Hours?.Max(hours => hours.ToS - hours.FromS) ?? double.PositiveInfinity;
}
