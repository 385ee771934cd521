using System.Globalization;
using System.Text.Json;
using Coilwright.Analysis.Planning;

namespace Coilwright.Analysis.Tests.Planning;

/// <summary>
/// Instances with proven optima: tests/Reference/schedules/published.json, which names their sources; a unit is a minute.
/// </summary>
internal static class PublishedSchedules
{
    public const double UnitS = 60;

    private static readonly JsonElement s_all = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "schedules", "published.json")))
        .RootElement;

    public static IReadOnlyList<string> Names { get; } = [.. Instances().Select(one => one.GetProperty("name").GetString()!)];

    public static int Optimum(string name) => Find(name).GetProperty("optimum").GetInt32();

    /// <summary>What sort of problem it is, and whether its optimum was read or derived by enumeration.</summary>
    public static (string Kind, string Standing) Kind(string name)
    {
        bool isRead = Find(name).GetProperty("standing").GetString() == "read";
        return (Find(name).GetProperty("kind").GetString()!, isRead ? "read" : "derived");
    }

    public static JobList Read(string name)
    {
        Job[] jobs = [.. Find(name).GetProperty("jobs").EnumerateArray().Select((job, at) => ReadJob(job.GetString()!, at))];
        int stations = jobs.Max(job => job.Steps.Max(step => step.On.Max(option => option.Station))) + 1;
        return new JobList([.. Enumerable.Range(1, stations).Select(number => new Station($"Station {number}"))], jobs, []);
    }

    /// <summary>One station and a family for each row, a minute a step.</summary>
    public static (JobList List, int OpenOptimum) SetUps()
    {
        JsonElement one = s_all.GetProperty("setups");
        long[][] rows = [.. one.GetProperty("rows").EnumerateArray().Select(row => row.GetString()!.Split(' ').Select(Number).ToArray())];
        Job[] jobs =
        [
            .. rows.Select((_, at) => new Job($"J{at}", [new JobStep("wind", [new StepOption(0, UnitS)]) { Family = $"F{at}" }])),
        ];
        SetUpTime[] setUps =
        [
            .. from before in Enumerable.Range(0, rows.Length)
            from after in Enumerable.Range(0, rows.Length)
            select new SetUpTime(0, $"F{before}", $"F{after}", rows[before][after] * UnitS),
        ];
        return (new JobList([new Station("Winder 1")], jobs, setUps), one.GetProperty("openOptimum").GetInt32());
    }

    private static JsonElement[] Instances() => [.. s_all.GetProperty("instances").EnumerateArray()];

    private static JsonElement Find(string name) => Instances().Single(one => one.GetProperty("name").GetString() == name);

    private static Job ReadJob(string steps, int at) =>
        new($"J{at}", [.. steps.Split(' ').Select((step, place) => new JobStep($"step {place + 1}", [.. step.Split('|').Select(Option)]))]);

    private static StepOption Option(string option)
    {
        string[] parts = option.Split(':');
        return new StepOption((int)Number(parts[0]), Number(parts[1]) * UnitS);
    }

    private static long Number(string text) => long.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
