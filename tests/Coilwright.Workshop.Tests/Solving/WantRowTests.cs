using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving;

namespace Coilwright.Workshop.Tests.Solving;

/// <summary>Rows and ticks of a form mean what the text of a question means, and come back from it.</summary>
public sealed class WantRowTests
{
    private static readonly Dictionary<string, double> s_now = new()
    {
        ["dcResistance"] = 6200,
        ["loadedPeak"] = 3000,
        ["loadedPeakGain"] = 4,
        ["output"] = 1,
        ["hum"] = 0.01,
    };

    [Theory]
    [InlineData("dcResistance", WantHow.About, "8.2", "", "dcResistance=8.2 kΩ")]
    [InlineData("dcResistance", WantHow.About, "8.2", "2", "dcResistance=8.2 kΩ±2 %")]
    [InlineData("dcResistance", WantHow.AtMost, "8200 Ω", "", "dcResistance<=8200 Ω")]
    [InlineData("loadedPeak", WantHow.AtLeast, "3,2", "", "loadedPeak>=3,2 kHz")]
    [InlineData("loadedPeak", WantHow.Between, "3", "3400 Hz", "loadedPeak=3 kHz..3400 Hz")]
    [InlineData("loadedPeakGain", WantHow.About, "5", "1", "loadedPeakGain=5 dB±1 dB")]
    [InlineData("output", WantHow.AtLeast, "+1", "", "output>=+1 dB")]
    [InlineData("output", WantHow.Most, "", "", "output=max")]
    [InlineData("hum", WantHow.Least, "", "", "hum=min")]
    public void A_row_is_a_line_and_comes_back_from_it(string quantity, WantHow how, string value, string upTo, string line)
    {
        WantRow row = new(quantity, how, value, upTo);
        List<Problem> problems = [];
        Objective? understood = Assert.Single(WantRows.Read([row], s_now, problems));
        Assert.Empty(problems);
        Assert.Equal(line, row.Line);
        Assert.Equal(ObjectiveParser.Read("want", line, s_now, problems), understood);
        Assert.Equal(line, WantRow.Of(line, s_now.Keys).Line);
    }

    [Fact]
    public void Every_row_that_is_wrong_is_named_at_once()
    {
        List<Problem> problems = [];
        IReadOnlyList<Objective?> read = WantRows.Read(
            [
                new("dcResistance", WantHow.About, "", ""),
                WantRow.Blank,
                new("", WantHow.About, "3", ""),
                new("dcResistance", WantHow.Between, "8", ""),
                new("loadedPeak", WantHow.AtLeast, "much", ""),
                new("dcResistance", WantHow.Between, "9", "8"),
            ],
            s_now,
            problems
        );
        Assert.All(read, Assert.Null);
        Assert.Equal(["want[0]", "want[2]", "want[3]", "want[4]", "want[5]"], problems.Select(problem => problem.Field));
        Assert.Contains("kHz", problems[3].Allowed, StringComparison.Ordinal);

        problems.Clear();
        WantRows.Read([WantRow.Blank], s_now, problems);
        Assert.Equal("want[0]", Assert.Single(problems).Field);
    }

    [Fact]
    public void Ticks_are_a_text_and_come_back_from_it()
    {
        OfferedChoice turns = new(Choice.Turns, "8,000", "2,000", "40,000", []),
            height = new(Choice.WindingHeight, "11 mm", "8.8 mm", "13.2 mm", []),
            gauge = new(Choice.Gauge, "AWG 42", "", "", ["AWG 41.5", "AWG 42", "AWG 42.5"]);
        ChoiceTick[] ticks =
        [
            new(turns, true, "5,000", "", []),
            new(height, true, "", "12", []),
            new(gauge, true, "", "", ["AWG 42", "AWG 42.5"]),
        ];
        List<Problem> problems = [];
        string text = ChoiceTick.Read(ticks, problems);
        Assert.Empty(problems);
        Assert.Equal("turns=5000..40000, windingHeight=8.8 mm..12 mm, gauge=AWG 42/AWG 42.5", text);
        Assert.Equal(text, ChoiceTick.Read(ChoiceTick.Of([turns, height, gauge], text), problems));

        Assert.Equal("", ChoiceTick.Read([ticks[0] with { Ticked = false }], problems));
        ChoiceTick.Read([ticks[0] with { From = "9000", To = "5000" }], problems);
        Assert.Equal(["vary", "turns"], problems.Select(problem => problem.Field));
    }
}
