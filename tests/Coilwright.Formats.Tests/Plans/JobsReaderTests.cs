using Coilwright.Analysis.Planning;
using Coilwright.Formats.Plans;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Tests.Plans;

/// <summary>coilwright.jobs/1.</summary>
public sealed class JobsReaderTests
{
    private const string Stations =
        "\"stations\": [ { \"name\": \"W\" }, "
        + "{ \"name\": \"P\", \"hours\": [ { \"from\": \"0 h\", \"to\": \"8 h\", \"every\": \"24 h\" } ] } ]";
    private const string SetUps = "\"setups\": [ { \"station\": \"W\", \"from\": \"a\", \"to\": \"b\", \"time\": \"10 min\" } ]";

    [Fact]
    public void A_list_is_read_in_seconds()
    {
        ReadOutcome<JobList> read = Read(
            Stations,
            "\"jobs\": [ { \"name\": \"B-12\", \"release\": \"1 min\", \"due\": \"3 d\", \"weight\": 2, \"steps\": [ "
                + Step(
                    "\"on\": [ { \"station\": \"W\", \"time\": \"21 min\" }, { \"station\": \"P\", \"time\": \"0.5 h\" } ], "
                        + "\"family\": \"a\", \"minGap\": \"0 min\", \"maxGap\": \"24 h\""
                )
                + " ] } ]",
            SetUps,
            "\"want\": \"tardiness\""
        );
        Assert.Empty(read.Problems);
        Job job = Assert.Single(read.Value!.Jobs);
        Assert.Equal((60, 259_200, 2), (job.ReleaseS, job.DueS!.Value, job.Weight));
        Assert.Equal([new StepOption(0, 1260), new StepOption(1, 1800)], job.Steps[0].On);
        Assert.Equal(("a", 0, 86_400), (job.Steps[0].Family, job.Steps[0].MinGapS, job.Steps[0].MaxGapS!.Value));
        Assert.Equal([new OpenHours(0, 28_800, 86_400)], read.Value.Stations[1].Hours);
        Assert.Equal([new SetUpTime(0, "a", "b", 600)], read.Value.SetUps);
        Assert.Equal(PlanObjective.Tardiness, read.Value.Want);
    }

    [Theory]
    [InlineData("\"on\": [ { \"station\": \"Wx\", \"time\": \"1 min\" } ]", "jobs[0].steps[0].on[0].station")]
    [InlineData("\"on\": []", "jobs[0].steps[0].on")]
    [InlineData("\"family\": \"a\"", "jobs[0].steps[0].on")]
    [InlineData("\"on\": [ { \"station\": \"W\", \"time\": \"0 min\" } ]", "jobs[0].steps[0].on[0].time")]
    [InlineData("\"on\": [ { \"station\": \"W\", \"time\": \"-5 min\" } ]", "jobs[0].steps[0].on[0].time")]
    [InlineData("\"on\": [ { \"station\": \"W\", \"time\": 5 } ]", "jobs[0].steps[0].on[0].time")]
    [InlineData(
        "\"on\": [ { \"station\": \"W\", \"time\": \"5 min\" }, { \"station\": \"W\", \"time\": \"6 min\" } ]",
        "jobs[0].steps[0].on"
    )]
    [InlineData("\"on\": [ { \"station\": \"W\", \"time\": \"5 min\" } ], \"family\": \"c\"", "jobs[0].steps[0].family")]
    [InlineData("\"on\": [ { \"station\": \"P\", \"time\": \"9 h\" } ]", "jobs[0].steps[0].on")]
    [InlineData(
        "\"on\": [ { \"station\": \"W\", \"time\": \"5 min\" } ], \"minGap\": \"2 h\", \"maxGap\": \"1 h\"",
        "jobs[0].steps[0].maxGap"
    )]
    [InlineData(
        "\"on\": [ { \"station\": \"W\", \"time\": \"5 min\", \"tool\": 1 } ], \"gap\": 1",
        "jobs[0].steps[0].on[0].tool jobs[0].steps[0].gap"
    )]
    public void A_wrong_step_is_told_with_its_place(string step, string places) =>
        Holds(Read(Stations, "\"jobs\": [ { \"name\": \"B\", \"steps\": [ " + Step(step) + " ] } ]", SetUps), places);

    [Theory]
    [InlineData("\"stations\": [ { \"name\": \"W\", \"hours\": [] } ]", "stations[0].hours")]
    [InlineData("\"stations\": [ { \"name\": \"W\", \"hours\": [ { \"from\": \"8 h\", \"to\": \"8 h\" } ] } ]", "stations[0].hours[0].to")]
    [InlineData(
        "\"stations\": [ { \"name\": \"W\", \"hours\": [ { \"from\": \"0 h\", \"to\": \"8 h\", \"every\": \"4 h\" } ] } ]",
        "stations[0].hours[0].every"
    )]
    [InlineData("\"stations\": [ { \"name\": \"W\" }, { \"name\": \"w\" } ]", "stations[1].name")]
    public void A_wrong_station_is_told_with_its_place(string stations, string places) => Holds(Read(stations, Good), places);

    [Theory]
    [InlineData("\"jobs\": []", "jobs")]
    [InlineData("\"jobs\": [ { \"name\": \"B\", \"steps\": [] } ]", "jobs[0].steps")]
    [InlineData(
        "\"jobs\": [ { \"name\": \"B\", \"release\": \"2 d\", \"due\": \"1 d\", \"weight\": -1, \"stepz\": [] } ]",
        "jobs[0].due jobs[0].weight jobs[0].stepz"
    )]
    public void A_wrong_job_is_told_with_its_place(string jobs, string places) => Holds(Read(Stations, jobs), places);

    [Theory]
    [InlineData("\"setups\": [ { \"station\": \"X\", \"from\": \"a\", \"time\": \"1 min\" } ]", "setups[0].station setups[0].to")]
    [InlineData("\"want\": \"speed\"", "want")]
    [InlineData("\"wants\": \"makespan\"", "wants")]
    public void A_wrong_rest_is_told_with_its_place(string rest, string places) => Holds(Read(Stations, Good, rest), places);

    [Fact]
    public void A_set_up_that_is_given_twice_is_told() =>
        Holds(
            Read(
                Stations,
                Good,
                "\"setups\": [ { \"station\": \"W\", \"from\": \"a\", \"to\": \"b\", \"time\": \"1 min\" }, "
                    + "{ \"station\": \"W\", \"from\": \"a\", \"to\": \"b\", \"time\": \"2 min\" } ]"
            ),
            "setups[1]"
        );

    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(45, "45 s")]
    [InlineData(1260, "21 min")]
    [InlineData(86_400 + (3 * 3600) + 60, "1 d 3 h 1 min")]
    [InlineData(3599.9996, "1 h")]
    [InlineData(59.25, "59.25 s")]
    public void Times_are_written_as_people_say_them(double seconds, string words) => Assert.Equal(words, PlanTimes.Describe(seconds));

    private static string Good =>
        "\"jobs\": [ { \"name\": \"B\", \"steps\": [ " + Step("\"on\": [ { \"station\": \"W\", \"time\": \"5 min\" } ]") + " ] } ]";

    private static string Step(string fields) => "{ \"name\": \"wind\", " + fields + " }";

    private static void Holds(ReadOutcome<JobList> read, string places)
    {
        Assert.Equal(places.Split(' '), read.Problems.Select(problem => problem.Field));
        Assert.Null(read.Value);
    }

    private static ReadOutcome<JobList> Read(params string[] parts) =>
        JobsReader.Read("{ \"format\": \"coilwright.jobs/1\", " + string.Join(", ", parts) + " }");
}
