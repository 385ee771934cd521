namespace Coilwright.Tests.Commands;

public sealed class WrongInputTests
{
    /// <summary>Ten mistakes, each of another kind, with the field each is in.</summary>
    private const string TenMistakes = """
        {
          "format": "coilwright.recipe/1",
          "name": "Ten mistakes",
          "strings": { "count": 6, "spacing": "10.4", "clearance": "2.5 mm" },
          "coils": [
            {
              "name": "main",
              "bobbin": { "coreLength": "64 kg", "coreWidth": "6.2 mm", "windingHeight": "-11 mm", "maxBuild": "4.3 mm" },
              "wire": { "gauge": "AWG 420", "insulation": "plain-enamel", "build": "single" },
              "winding": { "turns": 0, "direction": "sideways", "lay": "scattered", "pich": "0.19 mm", "tension": "14 gf" },
              "poles": [ { "shape": "rod", "material": "unobtainium", "diameter": "4.75 mm", "length": "17 mm",
                "count": 6, "spacing": "10.4 mm", "top": "9 mm", "magnetised": "north-up" } ]
            }
          ],
          "connection": "tangled",
          "targets": { "dcResistance": { "nominal": "6.2 H", "tolerance": "4 %" } }
        }
        """;

    private static readonly string[] s_fields =
    [
        "strings.spacing",
        "coils[0].bobbin.coreLength",
        "coils[0].bobbin.windingHeight",
        "coils[0].wire.gauge",
        "coils[0].winding.turns",
        "coils[0].winding.direction",
        "coils[0].winding.pich",
        "coils[0].poles[0].material",
        "connection",
        "targets.dcResistance.nominal",
    ];

    [Theory]
    [InlineData("predict")]
    [InlineData("respond")]
    [InlineData("wind")]
    public async Task Ten_mistakes_in_a_recipe_are_all_listed(string command)
    {
        using TestFolder folder = new();

        CommandRun run = await CommandRun.Of(command, folder.Write("ten.json", TenMistakes));

        Assert.Equal((2, ""), (run.Exit, run.Output));
        string[] lines = [.. run.Error.Split('\n').Where(line => line.StartsWith("  ", StringComparison.Ordinal))];
        Assert.All(s_fields, field => Assert.Contains(lines, line => line.StartsWith($"  {field}:", StringComparison.Ordinal)));
        Assert.Equal(10, lines.Length);
        // the nearest name
        Assert.Contains("pitch", lines.Single(line => line.Contains(".pich:", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_file_a_folder_and_bytes_that_are_no_text_are_said_in_words()
    {
        using TestFolder folder = new();
        File.WriteAllBytes(folder.PathOf("binary.json"), [0xC3, 0x28, 0xFF, 0xFE]);

        CommandRun missing = await CommandRun.Of("predict", folder.PathOf("nowhere.json")),
            aFolder = await CommandRun.Of("predict", folder.PathOf(".")),
            binary = await CommandRun.Of("predict", folder.PathOf("binary.json"));

        Assert.Equal((2, ""), (missing.Exit, missing.Output));
        Assert.Contains("there is no such file", missing.Error, StringComparison.Ordinal);
        Assert.Equal(2, aFolder.Exit);
        Assert.Contains("this is a folder", aFolder.Error, StringComparison.Ordinal);
        Assert.Equal(2, binary.Exit);
        Assert.Contains("not text", binary.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("predict")]
    [InlineData("predict", "a.json", "--nonsense")]
    [InlineData("dance")]
    [InlineData("respond", "a.json", "--points", "many")]
    [InlineData("batch", "start", "Harbour bridge")]
    public async Task A_wrong_command_line_exits_2_and_says_where_help_is(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);

        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("--help", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_options_are_listed_together_with_what_is_allowed()
    {
        CommandRun run = await CommandRun.Of("respond", "a.json", "--from", "20 kg", "--to", "5 MHz", "--points", "1", "--csv", "--json");

        Assert.Equal(2, run.Exit);
        foreach (string option in (string[])["--from:", "--to:", "--points:", "--csv:"])
        {
            Assert.Contains("  " + option, run.Error, StringComparison.Ordinal);
        }

        Assert.Contains("allowed: 2 to 1,000,000", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_exits_0_and_lists_every_command()
    {
        CommandRun run = await CommandRun.Of("--help");

        Assert.Equal(0, run.Exit);
        Assert.All((string[])["predict", "respond", "wind", "judge", "recipe", "batch", "read", "serve", "demo"], command =>
            Assert.Contains("  " + command, run.Output, StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("serve")]
    [InlineData("demo")]
    public async Task A_wrong_port_is_refused_before_any_shop_is_made(string command)
    {
        using TestFolder folder = new();
        string shop = Path.Combine(Path.GetDirectoryName(folder.Write("note.txt", ""))!, "shop.db");

        CommandRun run = await CommandRun.Of(command, "--shop", shop, "--port", "99999");

        Assert.Equal(2, run.Exit);
        Assert.Contains("--port", run.Error, StringComparison.Ordinal);
        Assert.False(Path.Exists(shop));
    }
}
