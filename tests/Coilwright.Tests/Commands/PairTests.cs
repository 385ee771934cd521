using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class PairTests
{
    private const string Coils = """
        tag,family,dcResistance [kΩ],turns,shelf
        S-4,slug,4.11,5150,upper
        S-1,slug,3.92,5000,
        C-2,screw,4.01,5160,
        S-3,slug,4.05,5100,
        C-1,screw,3.95,5150,lower
        C-4,screw,4.12,5310,
        S-2,slug,3.98,5010,
        C-3,screw,4.06,5250,
        """;

    [Fact] // arithmetic from the ohms given; the four differences are 0.8, 0.75, 0.25 and 0.24 %
    public async Task Slug_and_screw_coils_are_paired_by_ohms()
    {
        using JsonDocument pairing = await Pair(Coils, exit: 0);
        Assert.Equal(
            [("S-1", "C-1", 0.77), ("S-2", "C-2", 0.75), ("S-3", "C-3", 0.25), ("S-4", "C-4", 0.24)],
            Pairs(pairing)
                .OrderBy(pair => pair.A, StringComparer.Ordinal)
                .Select(pair => (pair.A, pair.B, Math.Round(100 * pair.Difference, 2)))
        );
        Assert.Equal(0.0201, pairing.RootElement.GetProperty("total").GetDouble(), 0.00005);
        Assert.Equal("upper", pairing.RootElement.GetProperty("columns").GetProperty("S-4").GetProperty("shelf").GetString());
    }

    [Theory]
    [InlineData("screw=+150")]
    [InlineData("-150")] // the screw coils are the second family unless a slug coil comes second
    public async Task An_intended_offset_is_met(string offset)
    {
        string coils =
            offset == "-150"
                ? Coils
                    .Replace("S-4,slug,4.11,5150,upper\n", "", StringComparison.Ordinal)
                    .Replace("S-1,slug,3.92,5000,\n", "", StringComparison.Ordinal)
                : Coils;
        using JsonDocument pairing = await Pair(coils, exit: 0, "--by", "turns", "--offset", offset);
        JsonElement pair = pairing
            .RootElement.GetProperty("pairs")
            .EnumerateArray()
            .Single(one =>
                one.EnumerateObject().Any(part => part.Value.ValueKind == JsonValueKind.String && part.Value.GetString() == "S-3")
            );
        Assert.Equal(0, pair.GetProperty("difference").GetDouble(), 1e-12);
        Assert.Contains("C-3", pair.ToString(), StringComparison.Ordinal);
    }

    [Fact] // 5,000 and 5,150 turns: 20·log10(150/10150) = −36.6 dB
    public async Task The_hum_that_an_offset_leaves_is_told()
    {
        using JsonDocument pairing = await Pair(
            "tag,family,turns\nS,slug,5000\nC,screw,5150\n",
            exit: 0,
            "--by",
            "turns",
            "--offset",
            "150 turns"
        );
        JsonElement hum = pairing.RootElement.GetProperty("pairs")[0].GetProperty("residualHum");
        Assert.Equal(-36.6, hum.GetProperty("value").GetDouble(), 0.05);
        Assert.True(hum.GetProperty("low").GetDouble() < -37 && hum.GetProperty("high").GetDouble() > -36);
    }

    [Fact]
    public async Task Leftovers_and_coils_not_measured_stay_in_stock()
    {
        using TestFolder folder = new();
        string path = folder.Write("coils.csv", "tag,dcResistance [kΩ],temperature [°C]\nA,6.30,35\nB,5.949,20\nC,,\nD,6.4,20\n");
        CommandRun run = await CommandRun.Of("pair", path, "--json");
        Assert.Equal(0, run.Exit);
        using JsonDocument pairing = JsonDocument.Parse(run.Output);
        (string a, string b, double difference) = Assert.Single(Pairs(pairing));
        Assert.Equal(("A", "B"), (a, b)); // 6.30 kΩ at 35 °C is 5.949 kΩ at 20 °C
        Assert.Equal(0, difference, 1e-4);
        Assert.Equal(["C", "D"], pairing.RootElement.GetProperty("left").EnumerateArray().Select(tag => tag.GetString()));
        Assert.Contains("Not measured (dcResistance), so left: C", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everything_wrong_in_a_table_is_named_by_line_and_column()
    {
        using TestFolder folder = new();
        string path = folder.Write("bad.csv", "tag,family,dcResistance [kQ],turns,turns\nS-1,slug,x,5\nS-1,,-3,0\n,a,9e9,1,2,3\n");
        CommandRun run = await CommandRun.Of("pair", path);
        Assert.Equal(2, run.Exit);
        Assert.Empty(run.Output);
        foreach (
            string expected in (string[])
                [
                    "line 1, dcResistance",
                    "line 1, turns",
                    "line 2, dcResistance",
                    "line 3, family",
                    "line 3, dcResistance",
                    "line 3, turns",
                    "line 3, tag",
                    "line 4: more cells",
                    "line 4, tag",
                    "line 4, dcResistance",
                ]
        )
        {
            Assert.Contains("  " + expected, run.Error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("--by", "ohms", "dcResistance")]
    [InlineData("--by", "turns=0", "0.001")]
    [InlineData("--offset", "banana", "screw")]
    [InlineData("--offset", "90 %", "50 %")]
    public async Task Options_not_understood_are_refused_with_what_is_allowed(string option, string value, string allowed)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("pair", folder.Write("coils.csv", Coils), option, value);
        Assert.Equal(2, run.Exit);
        Assert.Contains(option, run.Error, StringComparison.Ordinal);
        Assert.Contains(allowed, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_single_coil_has_no_partner_and_the_answer_is_no()
    {
        using JsonDocument pairing = await Pair("tag,dcResistance [kΩ]\nA,6.3\n", exit: 1);
        Assert.Empty(Pairs(pairing));
    }

    [Fact]
    public async Task Three_families_in_one_table_are_refused()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("pair", folder.Write("coils.csv", "tag,family,dcResistance [kΩ]\nA,a,1\nB,b,1\nC,c,1\n"));
        Assert.Equal(2, run.Exit);
        Assert.Contains("two", run.Error, StringComparison.Ordinal);
    }

    private static async Task<JsonDocument> Pair(string table, int exit, params string[] options)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(["pair", folder.Write("coils.csv", table), "--json", .. options]);
        Assert.True(run.Exit == exit, run.Error);
        Assert.Empty(Schemas.Complaints("pairing.json", run.Output));
        return JsonDocument.Parse(run.Output);
    }

    private static IEnumerable<(string A, string B, double Difference)> Pairs(JsonDocument pairing) =>
        pairing
            .RootElement.GetProperty("pairs")
            .EnumerateArray()
            .Select(pair =>
                (pair.GetProperty("a").GetString()!, pair.GetProperty("b").GetString()!, pair.GetProperty("difference").GetDouble())
            );
}
