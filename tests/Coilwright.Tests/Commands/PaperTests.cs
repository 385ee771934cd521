using System.Diagnostics;

namespace Coilwright.Tests.Commands;

/// <summary>Papers read back by programs that are not ours: text and pages by poppler, codes by zbar.</summary>
public sealed class PaperTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    [Theory]
    [InlineData("spec", "A4", "(A4)")]
    [InlineData("spec", "Letter", "612 x 792")]
    [InlineData("traveller", "A4", "(A4)")]
    [InlineData("traveller", "Letter", "612 x 792")]
    public async Task A_paper_is_one_page_of_the_size_asked_for_with_its_fonts_inside_and_a_code_that_scans(
        string kind,
        string size,
        string points
    )
    {
        using TestFolder folder = new();
        string pdf = folder.PathOf("paper.pdf");

        CommandRun run = await CommandRun.Of("paper", kind, s_harbour, "--pdf", pdf, "--size", size);

        Assert.Equal((0, ""), (run.Exit, run.Error));
        string about = Read("pdfinfo", pdf);
        Assert.Matches("Pages: +1\n", about);
        Assert.Contains(points, about, StringComparison.Ordinal);
        string[] fonts = [.. Read("pdffonts", pdf).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];
        Assert.NotEmpty(fonts);
        Read("pdftoppm", "-r", "300", "-png", "-singlefile", pdf, folder.PathOf("paper"));
        Assert.Equal("CODE-128:Harbour bridge", Read("zbarimg", "-q", folder.PathOf("paper.png")).Trim());
        Assert.All(fonts, font => Assert.Matches(@"DejaVu Sans.* yes yes ", font));
    }

    [Fact]
    public async Task The_spec_sheet_states_value_interval_basis_temperature_frequency_load_and_both_units()
    {
        string text = await SpecText(s_harbour);
        CommandRun predicted = await CommandRun.Of("predict", s_harbour);
        string ohms = predicted
            .Output.Split('\n')
            .Last(line => line.TrimStart().StartsWith("DC resistance at 20 °C", StringComparison.Ordinal));

        Assert.All(ohms.Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries), cell =>
            Assert.Contains(cell, text, StringComparison.Ordinal)
        );
        foreach (
            string said in (string[])
                [
                    "inductance at 1 kHz",
                    "Loaded means: 500 kΩ volume at 1, 500 kΩ tone with 22.0 nF at 1, 500 pF cable, 1.00 MΩ input",
                    "8,000",
                    " mm (",
                    " in)",
                    "Response, loaded: peak",
                    "Follow the product's safety data sheet",
                ]
        )
        {
            Assert.Contains(said, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("\"tags\": [\"hide-turns\"],", null)]
    [InlineData("\"notes\": \"Made for one customer; turns hidden.\",", null)]
    [InlineData("", "--hide-turns")]
    public async Task Turns_stay_in_the_shop_where_recipe_or_maker_says_so(string inRecipe, string? option)
    {
        using TestFolder folder = new();
        string recipe = folder.Write(
            "recipe.json",
            """
            { "format": "coilwright.recipe/1", "name": "Harbour bridge", EXTRA
              "coils": [ { "name": "main",
                "bobbin": { "coreLength": "64 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm", "maxBuild": "4.3 mm" },
                "wire": { "gauge": "AWG 42" }, "winding": { "turns": 8123 } } ] }
            """.Replace("EXTRA", inRecipe, StringComparison.Ordinal)
        );
        string[] more = option is null ? [] : [option];

        Assert.DoesNotContain("8,123", await SpecText(recipe, more), StringComparison.Ordinal);
        Assert.Contains("not told", await SpecText(recipe, more), StringComparison.Ordinal);
        Assert.DoesNotContain(
            "8,123",
            (await CommandRun.Of(["paper", "spec", recipe, "--html", .. more])).Output,
            StringComparison.Ordinal
        );
        Assert.Equal(inRecipe.Length == 0, (await SpecText(recipe)).Contains("8,123", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_traveller_prints_holds_and_cautions_in_their_steps()
    {
        using TestFolder folder = new();
        string pdf = folder.PathOf("traveller.pdf");
        await CommandRun.Of("paper", "traveller", s_harbour, "--pdf", pdf);
        string text = string.Join(
            ' ',
            Read("pdftotext", "-layout", pdf, "-").Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)
        );

        Assert.Contains("then hold for 24 h: ink cures", text, StringComparison.Ordinal);
        Assert.True(
            text.IndexOf("marking", StringComparison.Ordinal)
                < text.IndexOf("hardeners", text.IndexOf("marking", StringComparison.Ordinal), StringComparison.Ordinal)
        );
        Assert.Contains("Strong magnets pinch", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task Both_codes_of_every_label_are_read_from_the_printed_page(string size)
    {
        using TestFolder folder = new();
        string pdf = folder.PathOf("labels.pdf");
        CommandRun run = await CommandRun.Of(
            "paper",
            "labels",
            s_harbour,
            "--count",
            "12",
            "--first",
            "7",
            "--prefix",
            "HB-",
            "--pdf",
            pdf,
            "--size",
            size
        );
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Matches("Pages: +1\n", Read("pdfinfo", pdf));

        Read("pdftoppm", "-r", "300", "-png", "-singlefile", pdf, folder.PathOf("labels"));
        string[] read =
        [
            .. Read("zbarimg", "-q", folder.PathOf("labels.png"))
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

        string[] codes = [.. Enumerable.Range(7, 12).Select(number => $"HB-{number:000}")];
        string[] expected = [.. codes.Select(code => "CODE-128:" + code), .. codes.Select(code => "QR-Code:" + code)];
        Evidence check = Evidence
            .Outside($"Labels: both codes of 12 on {size}, from the PDF at 300 dpi", "the bar-code reader zbar [Zbar]", "run here", "exact")
            .Same(read.Length, expected.Length, "codes");
        Assert.All(expected.Zip(read), pair => check.Same(pair.Second, pair.First));
        check.Record();
    }

    [Fact]
    public async Task What_cannot_be_printed_is_refused_with_what_may()
    {
        CommandRun none = await CommandRun.Of("paper", "spec", s_harbour),
            size = await CommandRun.Of("paper", "spec", s_harbour, "--html", "--size", "A3"),
            labels = await CommandRun.Of("paper", "labels", s_harbour, "--count", "0", "--prefix", "é", "--pdf", "x.pdf");

        Assert.Equal((2, 2, 2), (none.Exit, size.Exit, labels.Exit));
        Assert.Contains("--html", none.Error, StringComparison.Ordinal);
        Assert.Contains("A4, Letter", size.Error, StringComparison.Ordinal);
        Assert.Contains("--count", labels.Error, StringComparison.Ordinal);
        Assert.Contains("--prefix", labels.Error, StringComparison.Ordinal);
    }

    private static async Task<string> SpecText(string recipe, params string[] more)
    {
        using TestFolder folder = new();
        string pdf = folder.PathOf("spec.pdf");
        CommandRun run = await CommandRun.Of(["paper", "spec", recipe, "--pdf", pdf, .. more]);
        Assert.Equal((0, ""), (run.Exit, run.Error));
        return string.Join(
            ' ',
            Read("pdftotext", "-layout", pdf, "-").Split((char[])[' ', '\n', '\f'], StringSplitOptions.RemoveEmptyEntries)
        );
    }

    internal static string Read(string program, params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true }
        )!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}");
        return output;
    }
}
