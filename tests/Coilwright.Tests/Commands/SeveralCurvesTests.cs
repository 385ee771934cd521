using System.Globalization;
using System.Numerics;
using System.Text;
using System.Text.Json;
using Coilwright.Physics.Circuit;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright fit with several curves behind one exciter.</summary>
public sealed class SeveralCurvesTests
{
    private const string Capacitor = """{ "format": "coilwright.load/1", "input": { "capacitance": "10 nF" } }""";
    private static readonly LumpedPickup s_pickup = new(7800, 3.4, 130e-12);

    [Fact]
    public async Task The_ratio_of_two_curves_tells_the_parts_whatever_the_exciter_does()
    {
        using TestFolder folder = new();
        (string bare, string loaded, string load) = Write(folder);
        CommandRun run = await CommandRun.Of("fit", bare, loaded, "--load", "none", "--load", load, "--exciter", "--json");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("fit.json", run.Output));
        JsonElement root = JsonDocument.Parse(run.Output).RootElement;
        JsonElement parts = root.GetProperty("parts");
        Assert.Equal(7800, parts.GetProperty("resistance").GetProperty("value").GetDouble(), 40.0);
        Assert.Equal(3.4, parts.GetProperty("inductance").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal(130e-12, parts.GetProperty("capacitance").GetProperty("value").GetDouble(), 1e-12);
        Assert.InRange(root.GetProperty("ratios")[0].GetProperty("missed").GetDouble(), 0, 0.2);

        CommandRun people = await CommandRun.Of("fit", bare, loaded, "--load", "none", "--load", load);
        Assert.Contains("over the first curve: missed by 0.", people.Output, StringComparison.Ordinal);
    }

    /// <summary>Each wrong call is named; none ends in a mistake of ours.</summary>
    [Fact]
    public async Task What_tells_nothing_is_refused_by_name()
    {
        using TestFolder folder = new();
        (string bare, string loaded, string load) = Write(folder);
        string short_ = folder.Write("short.csv", string.Join('\n', File.ReadLines(bare).Take(200)));
        string noPhase = folder.Write("nophase.csv", string.Join('\n', File.ReadLines(bare).Select(line => line[..line.LastIndexOf(',')])));
        string turned = folder.Write(
            "turned.json",
            """{ "format": "coilwright.load/1", "volume": { "resistance": "500 kΩ", "setting": 0.5 } }"""
        );
        foreach (
            (string[] call, string said) in new (string[], string)[]
            {
                (["fit", bare, "--exciter"], "nothing can be told"),
                (["fit", bare, loaded, "--load", load], "1 for 2 curves"),
                (["fit", bare, loaded, "--load", "none", "--load", "none"], "has the load of"),
                (["fit", bare, short_, "--load", "none", "--load", load], "was not read at the frequencies of"),
                (["fit", bare, noPhase, "--load", "none", "--load", load], "has no phase"),
                (["fit", bare, loaded, "--load", "none", "--load", turned], "straight across the pickup"),
                (["fit", bare, bare, "--load", "none", "--load", load], "its load changes nothing"),
                (["fit", bare, loaded, "--load", "none", "--load", load, "--resistance", "8k"], "the ratio of curves tells"),
            }
        )
        {
            CommandRun run = await CommandRun.Of(call);
            Assert.Equal(2, run.Exit);
            Assert.Contains(said, run.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Loads_in_the_wrong_order_are_no_pickup()
    {
        using TestFolder folder = new();
        (string bare, string loaded, string load) = Write(folder);
        CommandRun run = await CommandRun.Of("fit", bare, loaded, "--load", load, "--load", "none");
        Assert.Equal(1, run.Exit);
        Assert.Contains("this curve gives no pickup", run.Output, StringComparison.Ordinal);
        Assert.Contains("in this order?", run.Output, StringComparison.Ordinal);
    }

    private static (string Bare, string Loaded, string Load) Write(TestFolder folder) =>
        (folder.Write("bare.csv", Curve(0)), folder.Write("capacitor.csv", Curve(10e-9)), folder.Write("capacitor.json", Capacitor));

    /// <summary>A pickup behind an exciter that is anything but flat.</summary>
    private static string Curve(double addedF)
    {
        StringBuilder table = new("frequency [Hz],gain [dB],phase [deg]\n");
        foreach (double hz in PickupResponse.LogFrequencies(40, 20_000, 600))
        {
            Complex own = new(0, 2 * Math.PI * hz * (s_pickup.CapacitanceF + addedF)),
                exciter = new Complex(0, hz / 400) / (1 + new Complex(0, hz / 5000)) * (1 + 0.3 * Math.Sin(hz / 900)),
                read = exciter / (1 + s_pickup.ImpedanceOhm(hz) * own);
            table.AppendLine(
                CultureInfo.InvariantCulture,
                $"{hz:0.###},{20 * Math.Log10(read.Magnitude):0.####},{read.Phase * 180 / Math.PI:0.###}"
            );
        }

        return table.ToString();
    }
}
