using System.Diagnostics;
using Coilwright.Papers.Tags;
using Coilwright.Workshop.Batches;

namespace Coilwright.Papers.Tests.Tags;

public sealed class TagSheetTests
{
    private static readonly BatchRecord s_batch = new(Guid.Empty, "H-12", Guid.Empty, 1, "main", 60, "C-", "", "", "", default);

    /// <summary>
    /// An independent reader (zbar) reads every bar of a whole sheet, and both codes of a tag held before it alone, as a reader at a bench
    /// sees it.
    /// </summary>
    [Fact]
    public void Every_tag_is_read_by_an_independent_reader()
    {
        string[] sheet = Read(first: 1, count: 12),
            tags = [.. Enumerable.Range(1, 12).Select(number => $"H-12/C-{number:000}")];

        Evidence check = Evidence
            .Outside(
                "Tags: 12 Code 128 of a printed sheet; both codes of three single tags",
                "the bar-code reader zbar [Zbar]",
                "run here",
                "exact"
            )
            .Same(
                string.Join('\n', sheet.Where(line => line.StartsWith("CODE-128:", StringComparison.Ordinal))),
                string.Join('\n', tags.Select(tag => "CODE-128:" + tag)),
                "sheet"
            );
        foreach (int number in (int[])[1, 7, 60])
        {
            check.Same(string.Join('\n', Read(number, 1)), $"CODE-128:H-12/C-{number:000}\nQR-Code:H-12/C-{number:000}", "tag");
        }

        check.Record();
    }

    private static string[] Read(int first, int count)
    {
        string? browser = Program("chromium"),
            reader = Program("zbarimg");
        Assert.True(browser is not null && reader is not null, "chromium and zbarimg (zbar-tools) are needed: ./test installs them");
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-tags-");
        string page = Path.Combine(folder.FullName, "tags.html"),
            picture = Path.Combine(folder.FullName, "tags.png");
        File.WriteAllText(page, TagSheetHtmlWriter.Render(s_batch, first, count));
        Run(
            browser,
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--user-data-dir=" + folder.FullName,
            "--force-device-scale-factor=3",
            "--window-size=800,700",
            "--screenshot=" + picture,
            "file://" + page
        );
        string[] read =
        [
            .. Run(reader, "-q", picture).Split('\n', StringSplitOptions.RemoveEmptyEntries).Distinct().Order(StringComparer.Ordinal),
        ];
        folder.Delete(recursive: true);
        return read;
    }

    [Theory]
    [InlineData("H-12/C-007", "C-007")]
    [InlineData("h-12/c-7", "C-007")]
    [InlineData("C-007", "C-007")]
    [InlineData("6k21", null)]
    [InlineData("6210", null)]
    [InlineData("H-13/C-007", null)]
    public void A_code_scanned_where_ohms_were_expected_is_told_from_ohms(string typed, string? tag) =>
        Assert.Equal(tag, BatchTags.Scanned(s_batch, typed));

    private static string? Program(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, name))
            .FirstOrDefault(File.Exists);

    private static string Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true }
        )!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }
}
