using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class IdentifyTests
{
    private const string Bench7 = """
        { "format": "coilwright.original/1", "name": "bench 7",
          "bobbin": { "coreLength": "64 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm" },
          "poles": [ { "shape": "rod", "diameter": "4.75 mm", "length": "17 mm", "count": 6, "spacing": "10.4 mm", "top": "9 mm" } ],
          "readings": [ { "quantity": "dcResistance", "value": "5.76 kΩ", "uncertainty": "0.5 %", "temperature": "20 °C" },
                        { "quantity": "inductance", "value": "2.2 H", "at": "120 Hz", "uncertainty": "1 %" },
                        { "quantity": "overallDiameter", "value": "2.8 thou", "uncertainty": "0.05 thou" } ] }
        """;

    [Fact]
    public async Task The_answer_is_valid_by_its_schema_and_most_probably_42_single()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("identify", folder.Write("bench7.json", Bench7), "--json"), again = await CommandRun.Of("identify", folder.Write("bench7.json", Bench7), "--json");

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Equal(run.Output, again.Output);
        Assert.Empty(Schemas.Complaints("original.json", Bench7));
        Assert.Empty(Schemas.Complaints("explanations.json", run.Output));
        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement root = document.RootElement, best = root.GetProperty("explanations")[0], turns = best.GetProperty("turns");
        Assert.Equal(("AWG 42", "single"), (best.GetProperty("gauge").GetString(), best.GetProperty("build").GetString()));
        Assert.InRange(best.GetProperty("probability").GetDouble(), 0.7, 0.97);
        Assert.InRange(turns.GetProperty("value").GetDouble(), turns.GetProperty("low").GetDouble(), turns.GetProperty("high").GetDouble());
        Assert.True(root.GetProperty("converged").GetBoolean());
        Assert.DoesNotContain(root.GetProperty("nextReading").EnumerateArray(), next => next.GetProperty("quantity").GetString() == "overallDiameter");
        Assert.Equal("alnico-5", root.GetProperty("marginals").GetProperty("material").EnumerateObject().First().Name);
    }

    [Fact]
    public async Task A_warm_reading_is_brought_to_20_degrees()
    {
        using TestFolder folder = new();
        CommandRun cold = await CommandRun.Of("identify", folder.Write("a.json", Bench7), "--json");
        // 5.76 kΩ at 20 °C is 5.9864 kΩ at 30 °C.
        CommandRun warm = await CommandRun.Of("identify", folder.Write("b.json", Bench7.Replace("5.76 kΩ", "5.98637 kΩ", StringComparison.Ordinal).Replace("\"20 °C\"", "\"30 °C\"", StringComparison.Ordinal)), "--json");
        Assert.Equal(Turns(cold), Turns(warm), 0.01);
    }

    [Fact]
    public async Task Every_mistake_is_listed_with_its_own_path()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("identify", folder.Write("bad.json", """
            { "format": "coilwright.original/1", "bobin": {}, "bobbin": { "coreLength": "64 kg", "coreWidth": "6.2 mm", "windingHeight": "11 mm" },
              "readings": [ { "quantity": "dcResistanc", "value": "5 kΩ" }, { "quantity": "inductance", "value": "5 H", "uncertainty": "7" } ] }
            """));

        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.All((string[])["  bobin: ", "  bobbin.coreLength: ", "  readings[0].quantity: ", "  readings[1].uncertainty: "], field => Assert.Contains(field, run.Error, StringComparison.Ordinal));
    }

    private static double Turns(CommandRun run)
    {
        using JsonDocument document = JsonDocument.Parse(run.Output);
        return document.RootElement.GetProperty("explanations")[0].GetProperty("turns").GetProperty("value").GetDouble();
    }
}
