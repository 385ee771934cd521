using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;

namespace Coilwright.Papers.Tests;

/// <summary>A paper as poppler, a reader that is not ours, finds it.</summary>
/// <param name="Text">Its words, one blank between them.</param>
/// <param name="Pages">How many pages.</param>
/// <param name="Outside">Words nearer to the edge than printers print, or on one another.</param>
/// <param name="Fonts">One line a font.</param>
/// <param name="Sizes">Every word with the height of its box, points, and its page.</param>
internal sealed partial record PrintedPaper(
    string Text,
    int Pages,
    IReadOnlyList<string> Outside,
    IReadOnlyList<string> Fonts,
    IReadOnlyList<(string Word, double HeightPt, int Page)> Sizes
)
{
    /// <summary>What printers leave free at the edge, 5 mm in points; common practice, no source.</summary>
    private const double Edge = 5 / 25.4 * 72;

    /// <summary>Prints a sheet, keeps a copy where COILWRIGHT_PAPERS names a folder, and reads it back.</summary>
    public static PrintedPaper Of(Sheet sheet, PaperSize size = PaperSize.A4) =>
        Read(SheetPdf.Render([sheet], size), $"{sheet.Kind} {sheet.Subject} {size}");

    /// <summary>The same of finished bytes.</summary>
    public static PrintedPaper Read(byte[] bytes, string name)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-papers-");
        string pdf = Path.Combine(folder.FullName, "paper.pdf"),
            boxes = Path.Combine(folder.FullName, "boxes.html");
        File.WriteAllBytes(pdf, bytes);
        if (Environment.GetEnvironmentVariable("COILWRIGHT_PAPERS") is { Length: > 0 } kept)
        {
            File.WriteAllBytes(Path.Combine(kept, name.Replace(' ', '-').Replace('/', '-') + ".pdf"), bytes);
        }

        Run("pdftotext", "-bbox", pdf, boxes);
        (int pages, List<string> outside, List<(string, double, int)> sizes) = Boxes(File.ReadAllText(boxes));
        string text = string.Join(
            ' ',
            Run("pdftotext", "-layout", pdf, "-").Split((char[])[' ', '\n', '\f'], StringSplitOptions.RemoveEmptyEntries)
        );
        string[] fonts = [.. Run("pdffonts", pdf).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];
        folder.Delete(recursive: true);
        return new PrintedPaper(text, pages, outside, fonts, sizes);
    }

    /// <summary>Every one of these stands on the paper, nothing lies beyond its edges, and its fonts are inside.</summary>
    public void Says(params string[] words)
    {
        Assert.All(words, word => Assert.Contains(word, Text, StringComparison.Ordinal));
        Assert.Empty(Outside);
        Assert.NotEmpty(Fonts);
        Assert.All(Fonts, font => Assert.Matches("DejaVu Sans.* yes yes ", font));
    }

    /// <summary>
    /// Words whose capitals are at least so high. DejaVu Sans: capitals 0.729 of the size, a word's box 1.164 of it (the font's own
    /// metrics).
    /// </summary>
    public IEnumerable<string> WordsOf(double leastMm) =>
        Sizes.Where(one => one.HeightPt * 0.729 / 1.164 / 72 * 25.4 >= leastMm).Select(one => one.Word);

    internal static string Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true }
        )!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}");
        return output;
    }

    private static (int Pages, List<string> Outside, List<(string Word, double HeightPt, int Page)> Sizes) Boxes(string html)
    {
        (int pages, double width, double height) = (0, 0, 0);
        List<string> outside = [];
        List<(string, double, int)> sizes = [];
        List<(string Word, double[] At)> onPage = [];
        foreach (Match match in Box().Matches(html))
        {
            double[] at = [.. match.Groups["n"].Captures.Select(one => double.Parse(one.Value, CultureInfo.InvariantCulture))];
            if (match.Value.StartsWith("<page", StringComparison.Ordinal))
            {
                outside.AddRange(Overlaps(onPage));
                onPage.Clear();
                (pages, width, height) = (pages + 1, at[0], at[1]);
            }
            else
            {
                sizes.Add((match.Groups["word"].Value, at[3] - at[1], pages));
                onPage.Add((match.Groups["word"].Value, at));
            }

            if (at.Length == 4 && (at[0] < Edge || at[1] < Edge || at[2] > width - Edge || at[3] > height - Edge))
            {
                outside.Add(match.Groups["word"].Value);
            }
        }

        outside.AddRange(Overlaps(onPage));
        return (pages, outside, sizes);
    }

    /// <summary>Words of a page that lie on one another by more than a third of the smaller box; boxes of lines set close touch.</summary>
    internal static IEnumerable<string> Overlaps(IReadOnlyList<(string Word, double[] At)> words) =>
        words.SelectMany(
            (one, at) =>
                words.Skip(at + 1).Where(other => Shared(one.At, other.At) > 0.35).Select(other => $"{one.Word} under {other.Word}")
        );

    /// <summary>The part of the smaller box that two boxes share.</summary>
    private static double Shared(double[] one, double[] other)
    {
        double wide = Math.Min(one[2], other[2]) - Math.Max(one[0], other[0]),
            high = Math.Min(one[3], other[3]) - Math.Max(one[1], other[1]);
        return wide <= 0 || high <= 0
            ? 0
            : wide * high / Math.Min((one[2] - one[0]) * (one[3] - one[1]), (other[2] - other[0]) * (other[3] - other[1]));
    }

    [GeneratedRegex("<(?:page|word)(?: \\w+=\"(?<n>[-0-9.]+)\")+>(?<word>[^<\n]*)")]
    private static partial Regex Box();
}
