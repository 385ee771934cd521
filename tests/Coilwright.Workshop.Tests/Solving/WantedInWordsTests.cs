using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving;

namespace Coilwright.Workshop.Tests.Solving;

/// <summary>What is wanted and what may change is typed in words as well as in keys, and means the same.</summary>
public sealed class WantedInWordsTests
{
    private static readonly Dictionary<string, double> s_known = new()
    {
        ["dcResistance"] = 6200,
        ["inductance"] = 2.4,
        ["loadedPeak"] = 3000,
        ["output"] = 1,
        ["coils[0].dcResistance"] = 3100,
    };

    [Theory]
    [InlineData("DC resistance = 8.2 kΩ", "dcResistance=8.2kΩ")]
    [InlineData("inductance = 2.4 H ± 3 %", "inductance=2.4H±3%")]
    [InlineData("loaded peak >= 3.2 kHz", "loadedPeak>=3.2kHz")]
    [InlineData("output >= +1 dB", "output>=+1dB")]
    [InlineData("output = max", "output=max")]
    [InlineData("coil 1, DC resistance = 3.2 kΩ", "coils[0].dcResistance=3.2kΩ")]
    public void A_want(string words, string keys)
    {
        List<Problem> problems = [];
        Objective? said = ObjectiveParser.Read("want", words, s_known, problems),
            meant = ObjectiveParser.Read("want", keys, s_known, problems);
        Assert.Empty(problems);
        Assert.NotNull(said);
        Assert.Equal(meant, said);
    }

    [Theory]
    [InlineData("DC resistance = 8 kΩ..8.4 kΩ", 8000, 8400)]
    [InlineData("output = +1 dB .. +2 dB", 1.1220184543, 1.2589254118)]
    [InlineData("loaded peak = 3 kHz ± 0.3 kHz", 2700, 3300)]
    public void A_want_with_two_ends(string words, double low, double high)
    {
        List<Problem> problems = [];
        Objective? read = ObjectiveParser.Read("want", words, s_known, problems);
        Assert.Empty(problems);
        Assert.Equal((low, high), (read!.Lowest, read.Highest), (a, b) =>
            Math.Abs(a.Item1 / b.Item1 - 1) + Math.Abs(a.Item2 / b.Item2 - 1) < 1e-9
        );
    }

    [Theory]
    [InlineData("DC resistance = 8.4 kΩ..8 kΩ")]
    [InlineData("DC resistance >= 8 kΩ..8.4 kΩ")]
    [InlineData("DC resistance = 8 kΩ..")]
    public void A_range_the_wrong_way_is_refused(string words)
    {
        List<Problem> problems = [];
        Assert.Null(ObjectiveParser.Read("want", words, s_known, problems));
        Assert.Contains("kΩ", Assert.Single(problems).Allowed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("turns, winding height = 9 mm..12 mm", "turns,windingHeight=9mm..12mm")]
    [InlineData("magnet = Alnico 5/ferrite", "magnet=alnico-5/ferrite")]
    [InlineData("core width, build = grade 1", "coreWidth,build=grade-1")]
    public void A_choice(string words, string keys)
    {
        List<Problem> problems = [];
        IReadOnlyList<Varied> said = DesignVariableParser.Read("vary", words, problems),
            meant = DesignVariableParser.Read("vary", keys, problems);
        Assert.Empty(problems);
        Assert.Equal(meant.Select(Plain), said.Select(Plain));
    }

    private static string Plain(Varied one) => $"{one.What} {one.Low} {one.High} {string.Join('|', one.Listed ?? [])}";
}
