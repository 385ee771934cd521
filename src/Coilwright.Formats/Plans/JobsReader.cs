using Coilwright.Analysis.Planning;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Plans;

/// <summary>Reads a job list to plan (format coilwright.jobs/1) and tells every mistake at once.</summary>
public static class JobsReader
{
    /// <summary>The format's name.</summary>
    public const string Format = "coilwright.jobs/1";

    /// <summary>Most jobs of a list.</summary>
    public const int MostJobs = 2000;

    /// <summary>Most steps of all jobs together.</summary>
    public const int MostSteps = 5000;

    private const int MostStations = 100;
    private const int MostSetUps = 50_000;

    private static readonly Dictionary<string, PlanObjective> s_wants = new(StringComparer.Ordinal)
    {
        ["makespan"] = PlanObjective.Makespan,
        ["tardiness"] = PlanObjective.Tardiness,
    };

    /// <summary>The word for what is wanted in the file formats.</summary>
    /// <param name="want">What is to be small.</param>
    public static string WordOf(PlanObjective want) => s_wants.First(one => one.Value == want).Key;

    /// <summary>The list of a file, or every problem.</summary>
    /// <param name="json">The text of the file.</param>
    public static ReadOutcome<JobList> Read(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static JobList Whole(JsonFields fields)
    {
        fields.Free("name", "notes");
        IReadOnlyList<Station> stations = fields.Objects("stations", StationReader.Read, MostStations, "[ { \"name\": \"Winder 1\" } ]");
        string[] names = [.. stations.Select(station => station?.Name ?? "")];
        JobReader reader = new(names);
        JobList list = new(
            stations,
            fields.Objects("jobs", reader.ReadJob, MostJobs, "[ { \"name\": \"B-12\", \"steps\": [ … ] } ]"),
            fields.Objects("setups", reader.ReadSetUp, MostSetUps),
            s_wants.GetValueOrDefault(fields.Word("want", s_wants.Keys) ?? "makespan")
        );
        CheckNames(fields, "stations", names);
        CheckNames(fields, "jobs", [.. list.Jobs.Select(job => job?.Name ?? "")]);
        if (fields.Problems.All.Count == 0)
        {
            JobChecks.Check(fields, list);
        }

        return list;
    }

    /// <summary>There is one at least, and no two have one name.</summary>
    private static void CheckNames(JsonFields fields, string list, string[] names)
    {
        if (fields.IsList(list) && names.Length == 0)
        {
            fields.Problems.Add(list, "the list is empty", "[]", "1 entry or more");
        }

        for (int at = 0; at < names.Length; at++)
        {
            int first = Array.FindIndex(names, name => NameKey.Same(name, names[at]));
            if (first < at && names[at].Length > 0)
            {
                fields.Problems.Add($"{list}[{at}].name", $"this name stands at {list}[{first}] already", $"\"{names[at]}\"");
            }
        }
    }
}
