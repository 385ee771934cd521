using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright meter, against an instrument that misbehaves in every way that a bench knows.</summary>
public sealed class MeterTests
{
    public static TheoryData<string> Demo =>
        [.. Directory.GetFiles(RepositoryFiles.PathOf("demo/meters")).Select(path => Path.GetFileName(path))];

    private static string OwnProfiles => RepositoryFiles.PathOf("src/Coilwright.Workshop/Instruments/Profiles");

    [Theory]
    [MemberData(nameof(Demo))]
    public void Every_example_keeps_to_the_public_format(string name) =>
        Assert.Empty(Schemas.Complaints("meter.json", File.ReadAllText(RepositoryFiles.PathOf("demo/meters/" + name))));

    [Fact]
    public async Task The_list_names_every_profile_and_what_it_asks()
    {
        CommandRun list = await CommandRun.Of("meter", "list");
        Assert.Equal((0, ""), (list.Exit, list.Error));
        foreach (string file in Directory.GetFiles(OwnProfiles))
        {
            string json = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            Assert.Empty(Schemas.Complaints("meter.json", json));
            Assert.Contains(Path.GetFileNameWithoutExtension(file), list.Output, StringComparison.Ordinal);
            JsonElement profile = JsonDocument.Parse(json).RootElement;
            Assert.Contains(profile.GetProperty("name").GetString()!, list.Output, StringComparison.Ordinal);
            if (profile.TryGetProperty("ask", out JsonElement ask))
            {
                Assert.Contains(ask.GetString()!, list.Output, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task A_reading_comes_in_the_public_format_with_the_line_as_it_came()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("+6.18", new("210E+03\r\n", 20));
        CommandRun run = await CommandRun.Of("meter", "read", "ohms", "--tcp", meter.Address, "--json");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("meterReading.json", run.Output));
        JsonElement reading = JsonDocument.Parse(run.Output).RootElement;
        Assert.Equal("dcResistance", reading.GetProperty("quantity").GetString());
        Assert.Equal(6182.1, reading.GetProperty("value").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal("measured", reading.GetProperty("value").GetProperty("basis").GetString());
        Assert.Equal("+6.18210E+03", reading.GetProperty("raw").GetString());
        Assert.True(meter.Asked >= 2, "a value counts when it stood still, not at its first answer");
    }

    [Fact]
    public async Task Over_range_is_said_and_has_no_value()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("+9.90000E+37\n");
        CommandRun run = await CommandRun.Of("meter", "read", "ohms", "--tcp", meter.Address, "--json");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Empty(Schemas.Complaints("meterReading.json", run.Output));
        JsonElement reading = JsonDocument.Parse(run.Output).RootElement;
        Assert.True(reading.GetProperty("overload").GetBoolean());
        Assert.False(reading.TryGetProperty("value", out _));
        Assert.Equal(
            "over range\n",
            (await CommandRun.Of("meter", "read", "ohms", "--tcp", meter.Address)).Output.ReplaceLineEndings("\n")
        );
    }

    [Fact]
    public async Task An_instrument_that_answers_once_is_believed_with_a_note()
    {
        bool first = true;
        await using SimulatedMeter meter = new(_ => [.. (SimulatedMeter.Part[])[first ? "6182.1\n" : "", SimulatedMeter.Part.HangsUp]]);
        CommandRun run = await CommandRun.Of("meter", "read", "ohms", "--tcp", meter.Address);
        first = false;
        Assert.Equal(0, run.Exit);
        Assert.Contains("answered once only", run.Error, StringComparison.Ordinal);
        Assert.StartsWith("6.18210 kΩ", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2.53 H\n", "measures something else")]
    [InlineData("ERROR\n", "holds no number")]
    [InlineData("6,182\n", "one number or two")]
    [InlineData("\u0001\u0002\u0003\n", "no text")]
    [InlineData("9.91E37\n", "has no number")]
    public async Task What_is_no_reading_is_refused_in_words_with_what_came(string answer, string told)
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying(answer);
        CommandRun run = await CommandRun.Of("meter", "read", "ohms", "--tcp", meter.Address);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("--tcp", run.Error, StringComparison.Ordinal);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cable_pulled_and_a_meter_that_says_nothing_are_named()
    {
        using TestFolder folder = new();
        string hasty = folder.Write(
            "hasty.json",
            """{ "format": "coilwright.meter/1", "name": "m", "ask": "READ?", "unit": "Ω", "wait": "0.3 s" }"""
        );
        await using SimulatedMeter silent = SimulatedMeter.Saying(),
            pulled = SimulatedMeter.Saying("+6.1", new("", 50), SimulatedMeter.Part.HangsUp);
        CommandRun nothing = await CommandRun.Of("meter", "read", hasty, "--tcp", silent.Address),
            half = await CommandRun.Of("meter", "read", hasty, "--tcp", pulled.Address);
        Assert.Equal((2, 2), (nothing.Exit, half.Exit));
        Assert.Contains("did not answer \"READ?\" within 0.3 s", nothing.Error, StringComparison.Ordinal);
        Assert.Contains("in the middle of a line", half.Error, StringComparison.Ordinal);
        Assert.Contains("\"+6.1\"", half.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_problem_is_listed_at_once()
    {
        CommandRun both = await CommandRun.Of("meter", "read", "nonsense", "--tcp", "x", "--serial", "y"),
            nowhere = await CommandRun.Of("meter", "read", "nonsense"),
            port = await CommandRun.Of("meter", "read", "ohms", "--tcp", "bench:70000"),
            unasked = await CommandRun.Of("meter", "read", "ohms-sent", "--usbtmc", "/dev/usbtmc0");
        Assert.All([both, nowhere, port, unasked], run => Assert.Equal((2, ""), (run.Exit, run.Output)));
        Assert.Contains("2 problems", both.Error, StringComparison.Ordinal);
        Assert.Contains("2 problems", nowhere.Error, StringComparison.Ordinal);
        Assert.Contains("65,535", port.Error, StringComparison.Ordinal);
        Assert.Contains("--usbtmc", unasked.Error, StringComparison.Ordinal);
    }

    /// <summary>Clips on and off by the scenario: three coils, the second moving all the while.</summary>
    [Fact]
    public async Task Watching_writes_each_coil_once_and_never_a_moving_one()
    {
        using CancellationTokenSource stop = new();
        int asked = 0;
        string Next() =>
            ++asked switch
            {
                < 5 => "9.9E37",
                < 45 => "6182.1",
                < 50 => "9.9E37",
                < 90 => FormattableString.Invariant($"{5000 + 40 * asked}"),
                < 95 => "9.9E37",
                < 135 => "6250.0",
                _ => "9.9E37",
            };
        await using SimulatedMeter meter = new(_ =>
        {
            if (asked == 140)
            {
                stop.Cancel();
            }

            return [Next() + "\n"];
        });
        CommandRun watch = await CommandRun.UntilAsync(stop.Token, "meter", "watch", "ohms", "--tcp", meter.Address);
        Assert.Equal(130, watch.Exit);
        Assert.Equal(
            ["6.18210 kΩ", "6.25000 kΩ"],
            watch.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Trim())
        );
    }
}
