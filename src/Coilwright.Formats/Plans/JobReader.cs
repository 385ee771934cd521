using Coilwright.Analysis.Planning;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Plans;

/// <summary>Reads jobs, their steps and set-ups, which name stations.</summary>
/// <param name="stations">Names of the stations, in their order.</param>
internal sealed class JobReader(string[] stations)
{
    private const int MostStepsOfJob = 200;
    private const double MostWeight = 1e6;

    public Job ReadJob(JsonFields fields)
    {
        fields.Free("notes");
        double releaseS = fields.Optional("release", PlanLimits.Since with { Example = "0 min" })?.Si ?? 0;
        double? dueS = fields.Optional("due", PlanLimits.Since)?.Si;
        if (dueS < releaseS)
        {
            fields.Problems.Add(
                fields.PathOf("due"),
                "this is due before it can begin",
                PlanTimes.Describe(dueS.Value),
                $"after its release at {PlanTimes.Describe(releaseS)}"
            );
        }

        Job job = new(
            fields.Text("name", "B-12"),
            fields.Objects("steps", ReadStep, MostStepsOfJob, "[ { \"name\": \"wind\", \"on\": [ … ] } ]")
        )
        {
            ReleaseS = releaseS,
            DueS = dueS,
            Weight = fields.Number("weight", 0, MostWeight) ?? 1,
        };
        CheckSome(fields, "steps", "a job without steps", "1 step or more");
        return job;
    }

    public SetUpTime ReadSetUp(JsonFields fields) =>
        new(
            StationAt(fields),
            fields.Text("from", "AWG 42"),
            fields.Text("to", "AWG 43"),
            fields.Required("time", PlanLimits.Since with { Example = "10 min" }).Si
        );

    private JobStep ReadStep(JsonFields fields)
    {
        fields.Free("notes");
        string name = fields.Text("name", "wind"),
            family = fields.Text("family");
        JobStep step = new(
            name,
            fields.Objects("on", ReadOption, stations.Length + 100, "[ { \"station\": \"Winder 1\", \"time\": \"21 min\" } ]")
        )
        {
            Family = family.Length > 0 ? family : null,
            MinGapS = fields.Optional("minGap", PlanLimits.Since with { Example = "0 min" })?.Si ?? 0,
            MaxGapS = fields.Optional("maxGap", PlanLimits.Since with { Example = "24 h" })?.Si,
        };
        CheckSome(fields, "on", "a step without station", "1 station or more");
        CheckStations(fields, step);
        if (step.MaxGapS < step.MinGapS)
        {
            fields.Problems.Add(
                fields.PathOf("maxGap"),
                "the longest gap is shorter than the shortest",
                PlanTimes.Describe(step.MaxGapS.Value),
                $"{PlanTimes.Describe(step.MinGapS)} or more"
            );
        }

        return step;
    }

    private StepOption ReadOption(JsonFields fields) => new(StationAt(fields), fields.Required("time", PlanLimits.Taking).Si);

    private int StationAt(JsonFields fields)
    {
        if (stations.Length == 0)
        {
            fields.Free("station");
            return 0;
        }

        return Array.IndexOf(stations, fields.Word("station", stations, required: true) ?? stations[0]);
    }

    private static void CheckStations(JsonFields fields, JobStep step)
    {
        if (step.On.Where(option => option is not null).GroupBy(option => option.Station).Any(same => same.Count() > 1))
        {
            fields.Problems.Add(fields.PathOf("on"), "a station stands here twice; keep one of them");
        }
    }

    private static void CheckSome(JsonFields fields, string name, string why, string allowed)
    {
        if (fields.Own(name) is { ValueKind: System.Text.Json.JsonValueKind.Array } list && list.GetArrayLength() == 0)
        {
            fields.Problems.Add(fields.PathOf(name), why, "[]", allowed);
        }
    }
}
