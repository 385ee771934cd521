using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Tests.Commands;

/// <summary>Help, labels of a label printer and the set-up sheet as PDF, by command.</summary>
public sealed class GuideAndLabelTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    [Fact]
    public async Task Guides_are_listed_and_printed_and_a_mistyped_name_finds_the_nearest()
    {
        CommandRun list = await CommandRun.Of("guide"),
            one = await CommandRun.Of("guide", "assembly-day"),
            wrong = await CommandRun.Of("guide", "asembly-day");

        Assert.Equal((0, 0, 2), (list.Exit, one.Exit, wrong.Exit));
        Assert.Matches("(?m)^assembly-day +Assembly day$", list.Output);
        Assert.Matches("(?m)^sources +Sources$", list.Output);
        Assert.Equal(File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "assembly-day.md")).Trim(), one.Output.Trim());
        Assert.Contains("nearest: assembly-day", wrong.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A4", "(A4)", 1)]
    [InlineData("Letter", "612 x 792", 1)] // 18 mm shorter: set a little smaller
    public async Task The_set_up_sheet_is_a_pdf_on_the_paper_asked_for(string size, string points, int pages)
    {
        using TestFolder folder = new();
        string pdf = folder.PathOf("wind.pdf");

        CommandRun run = await CommandRun.Of("wind", s_harbour, "--pdf", pdf, "--size", size),
            both = await CommandRun.Of("wind", s_harbour, "--pdf", pdf, "--json"),
            nowhere = await CommandRun.Of("wind", s_harbour, "--pdf", folder.PathOf("no/such/folder/x.pdf"));

        Assert.Equal((0, "", 2, 2), (run.Exit, run.Error, both.Exit, nowhere.Exit));
        string about = PaperTests.Read("pdfinfo", pdf);
        Assert.Matches($"Pages: +{pages}\n", about);
        Assert.Contains(points, about, StringComparison.Ordinal);
        string text = PaperTests.Read("pdftotext", "-layout", pdf, "-");
        Assert.All(["Real turns", "8,000", "Thread the wire", "CAUTION"], said => Assert.Contains(said, text, StringComparison.Ordinal));
        Assert.Contains("--json, --html and --pdf", both.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_label_is_as_large_as_asked_and_its_code_scans()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db"),
            pdf = folder.PathOf("label.pdf");
        await DoneAsync("recipe", "add", s_harbour, "--shop", shop);
        await DoneAsync("recipe", "release", "Harbour bridge", "--shop", shop);
        await DoneAsync("stock", "add", "0117", "--gauge", "AWG 42", "--lot", "K-22", "--shop", shop);
        await DoneAsync("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "5", "--tags", "H-", "--shop", shop);

        await DoneAsync("paper", "label", "spool", "0117", "--label", "50x25", "--pdf", pdf, "--shop", shop);
        Match size = Regex.Match(PaperTests.Read("pdfinfo", pdf), @"Page size: +([\d.]+) x ([\d.]+) pts");
        // 50 and 25 mm in points; poppler prints six digits.
        Assert.Equal(50 / 25.4 * 72, double.Parse(size.Groups[1].Value, CultureInfo.InvariantCulture), 1e-3);
        Assert.Equal(25 / 25.4 * 72, double.Parse(size.Groups[2].Value, CultureInfo.InvariantCulture), 1e-3);
        PaperTests.Read("pdftoppm", "-r", "203", "-png", "-singlefile", pdf, folder.PathOf("label"));
        Assert.Equal("0117", PaperTests.Read("zbarimg", "-q", "--raw", folder.PathOf("label.png")).Trim());

        await DoneAsync("paper", "label", "coil", "h-1", "--first", "2", "--count", "3", "--pdf", pdf, "--shop", shop);
        Assert.Matches("Pages: +3\n", PaperTests.Read("pdfinfo", pdf));
        CommandRun html = await CommandRun.Of("paper", "label", "coil", "H-1", "--html", "--shop", shop);
        Assert.Equal((0, 5), (html.Exit, Regex.Count(html.Output, "<svg [^>]*class=\"label\"")));
    }

    [Fact]
    public async Task What_no_label_can_be_is_refused_with_what_may()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await DoneAsync("stock", "add", "0117", "--gauge", "AWG 42", "--shop", shop);

        CommandRun size = await CommandRun.Of("paper", "label", "spool", "0117", "--label", "5x5", "--html", "--shop", shop),
            none = await CommandRun.Of("paper", "label", "spool", "0118", "--label", "huge", "--html", "--shop", shop),
            batch = await CommandRun.Of("paper", "label", "coil", "H-9", "--html", "--shop", shop);

        Assert.Equal((2, 2, 2), (size.Exit, none.Exit, batch.Exit));
        Assert.Contains("20 to 150 mm", size.Error, StringComparison.Ordinal);
        Assert.All(["--label", "no such spool"], said => Assert.Contains(said, none.Error, StringComparison.Ordinal));
        Assert.Contains("no such batch", batch.Error, StringComparison.Ordinal);
    }

    private static async Task DoneAsync(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);
        Assert.True(run.Exit == 0, run.Error);
    }
}
