using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Coilwright.Papers.Labels;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Labels;

/// <summary>Labels of a label printer, measured on the PDF by poppler and read by zbar.</summary>
public sealed partial class PrinterLabelTests
{
    private const double PointsAMm = 72 / 25.4;

    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string, string> Cases
    {
        get
        {
            TheoryData<string, string> all = [];
            foreach (LabelSize size in LabelSize.Usual)
            {
                foreach (string what in Labels.Keys)
                {
                    all.Add(size.Key, what);
                }
            }

            return all;
        }
    }

    private static Dictionary<string, PieceLabel> Labels { get; } =
        new(StringComparer.Ordinal)
        {
            ["coil"] = new("H-12/C-014", "C-014", ["batch H-12", "Harbour bridge C", "coil main"]),
            ["piece"] = new("2610-001", "2610-001", ["Breakwater twin C", "slate cover", "four leads"], HasMagnets: true),
            ["spool"] = new("0117", "Spool 0117", ["AWG 42 single", "plain enamel", "lot K-2210", "what the supplier wrote upon it"]),
            ["box"] = new(
                "WEST-7",
                "WEST-7",
                ["Westerly Instrument Workshop", "3 pieces", "2610-001, 2610-002, 2610-003"],
                HasMagnets: true
            ),
            ["longest"] = new(
                "WIDE-WIDE-WIDE-WIDE-",
                "WIDE-WIDE-WIDE-WIDE-",
                ["An extraordinarily long denomination of an unforeseen recipe", "a_word_without_any_end_whatsoever_in_it"],
                HasMagnets: true
            ),
        };

    /// <summary>Every word lies whole inside the label's own page, beside the code and beside the other words.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Everything_stands_whole_on_a_page_as_large_as_the_label(string key, string what)
    {
        (LabelSize size, PieceLabel label) = (Size(key), Labels[what]);
        byte[] pdf = PrinterLabelPdf.Render([label], size);
        PrintedPaper paper = PrintedPaper.Read(pdf, $"Label {what} {key}");
        (double width, double height, (string Word, double[] At)[] words) = Boxes(pdf);

        Assert.Equal(1, paper.Pages);
        Assert.Equal(size.WidthMm * PointsAMm, width, 0.02); // poppler prints points with two decimals and more
        Assert.Equal(size.HeightMm * PointsAMm, height, 0.02);
        Assert.NotEmpty(words);
        Assert.All(words, word => Assert.True(IsInside(word.At, width, height), $"{word.Word} {string.Join(' ', word.At)}"));
        Assert.Empty(PrintedPaper.Overlaps(words));
        Assert.Contains(
            label.Title,
            string.Concat(words.Select(word => word.Word)).Replace("Spool", "Spool ", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.Equal(label.HasMagnets, paper.Text.Contains("CAUTION Magnets: keep from implants", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_code_is_read_from_the_print_of_a_label_printer(string key, string what)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-label-");
        string pdf = Path.Combine(folder.FullName, "label.pdf"),
            picture = Path.Combine(folder.FullName, "label");
        File.WriteAllBytes(pdf, PrinterLabelPdf.Render([Labels[what]], Size(key)));
        // 203 dots an inch: common practice of label printers, no source.
        PrintedPaper.Run("pdftoppm", "-r", "203", "-png", "-mono", "-singlefile", pdf, picture);
        string read = PrintedPaper.Run("zbarimg", "-q", "--raw", picture + (File.Exists(picture + ".png") ? ".png" : ".pbm")).Trim();
        folder.Delete(recursive: true);
        Evidence
            .Outside(
                "Labels of a label printer, four sizes: their codes from the PDF at 203 dpi",
                "the bar-code reader zbar [Zbar]",
                "run here",
                "exact"
            )
            .Same(read, Labels[what].Code)
            .Record();
    }

    /// <summary>Words that do not fit are shortened with a full stop or an ellipsis, never cut by an edge.</summary>
    [Fact]
    public void Words_are_shortened_in_the_open()
    {
        LabelLayout layout = LabelLayout.Of(Labels["longest"], Size("50x25"));
        string[] said = [.. layout.Texts.Select(text => text.Text)];
        Assert.Contains(said, line => line.Contains(". ", StringComparison.Ordinal) || line.EndsWith('.'));
        Assert.Equal("extr. denom.", ShortWords.Fit("extraordinary denomination", text => text.Length <= 12));
        Assert.Equal("AWG 42", ShortWords.Fit("AWG 42", text => text.Length <= 6));
        Assert.Equal("lot…", ShortWords.Fit("lot K-2210", text => text.Length <= 4));
        Assert.Equal("", ShortWords.Fit("K-2210", text => text.Length <= 4));
    }

    [Fact]
    public void The_drawing_says_the_same_as_the_pdf_at_the_same_size()
    {
        foreach (PieceLabel label in Labels.Values)
        {
            XElement svg = XElement.Parse(PrinterLabelSvg.Of(label, Size("62x29")));
            Assert.Equal("62mm", svg.Attribute("width")!.Value);
            Assert.Equal(
                LabelLayout.Of(label, Size("62x29")).Texts.Select(text => text.Text),
                svg.Elements(s_svg + "text").Select(text => text.Value)
            );
            Assert.Single(svg.Elements(s_svg + "svg"));
        }

        Assert.Contains(
            "@page { size: 62mm 29mm; margin: 0; }",
            PrinterLabelSvg.Document([Labels["coil"]], Size("62x29")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_size_without_room_is_refused_with_what_to_do()
    {
        PieceLabel wide = new(new string('W', 40), new string('W', 40), [], HasMagnets: true);
        Assert.Contains("choose a larger one", LabelLayout.Refusal(wide, Size("20x20")), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => LabelLayout.Of(wide, Size("20x20")));
        Assert.Contains(
            "cannot be put into a code",
            LabelLayout.Refusal(new PieceLabel("Ω", "Ω", []), Size("62x29")),
            StringComparison.Ordinal
        );
        Assert.Contains(
            Cautions.ClosingLine,
            string.Join(' ', LabelLayout.Of(Labels["piece"], Size("100x50")).Texts.Select(text => text.Text)),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("62x29", 62.0, 29.0)]
    [InlineData(" 50 × 25 mm", 50.0, 25.0)]
    [InlineData("57,5 mm x 32 mm", 57.5, 32.0)]
    [InlineData("19x30", null, null)]
    [InlineData("62", null, null)]
    [InlineData("62x151", null, null)]
    [InlineData("axb", null, null)]
    public void A_size_is_read_as_people_write_it(string typed, double? width, double? height)
    {
        bool read = LabelSize.TryParse(typed, out LabelSize size);
        Assert.Equal(width is not null, read);
        if (read)
        {
            Assert.Equal((width, height), (size.WidthMm, size.HeightMm));
        }
    }

    private static LabelSize Size(string key) => LabelSize.TryParse(key, out LabelSize size) ? size : throw new ArgumentException(key);

    /// <summary>A word's box reaches over its letters; half a millimetre of it may lie in the free edge.</summary>
    private static bool IsInside(double[] at, double width, double height) =>
        at[0] >= PointsAMm && at[1] >= 0 && at[2] <= width - PointsAMm && at[3] <= height;

    private static (double Width, double Height, (string Word, double[] At)[] Words) Boxes(byte[] pdf)
    {
        string file = Path.GetTempFileName();
        File.WriteAllBytes(file, pdf);
        string html = PrintedPaper.Run("pdftotext", "-bbox", file, "-");
        File.Delete(file);
        double[] page = Numbers(Page().Match(html));
        return (page[0], page[1], [.. Word().Matches(html).Select(match => (match.Groups["word"].Value, Numbers(match)))]);
    }

    private static double[] Numbers(Match match) =>
        [.. match.Groups["n"].Captures.Select(one => double.Parse(one.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex("<page(?: \\w+=\"(?<n>[-0-9.]+)\")+>")]
    private static partial Regex Page();

    [GeneratedRegex("<word(?: \\w+=\"(?<n>[-0-9.]+)\")+>(?<word>[^<\n]*)")]
    private static partial Regex Word();
}
