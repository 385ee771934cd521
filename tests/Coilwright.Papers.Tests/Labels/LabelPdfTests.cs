using Coilwright.Papers.Labels;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Labels;

public sealed class LabelPdfTests
{
    [Theory]
    [InlineData(PaperSize.A4, 13)] // 16 on a page: two columns of eight, 33 mm each, inside margins of 10 mm
    [InlineData(PaperSize.Letter, 15)] // 14 on a page
    public void Two_hundred_labels_stand_whole_on_as_few_pages_as_hold_them(PaperSize size, int pages)
    {
        PieceLabel[] labels =
        [
            .. Enumerable
                .Range(1, 200)
                .Select(number => FormattableString.Invariant($"HB-{number:000}"))
                .Select(code => new PieceLabel(code, code, ["Harbour bridge", "main"])),
        ];

        PrintedPaper paper = PrintedPaper.Read(LabelPdf.Render(labels, size), $"Labels {size}");

        Assert.Equal(pages, paper.Pages);
        paper.Says([.. labels.Select(label => label.Title)]);
    }

    [Fact]
    public void A_label_warns_of_its_magnets_and_defers_to_the_data_sheet_and_one_without_magnets_does_not()
    {
        string serial = string.Concat(Enumerable.Repeat("WIDE-", 8));
        PieceLabel label = new(serial, serial, ["Breakwater twin C", "slate cover", "four leads"], HasMagnets: true);

        PrintedPaper
            .Read(LabelPdf.Render([label]), "Label with magnets")
            .Says(serial, "four leads", Cautions.MagnetsOnLabel, Cautions.ClosingLine);
        PrintedPaper bare = PrintedPaper.Read(LabelPdf.Render([label with { HasMagnets = false }]), "Label without magnets");
        Assert.DoesNotContain("Magnets", bare.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_longest_serial_is_made_smaller_and_stands_whole()
    {
        string serial = string.Concat(Enumerable.Repeat("WIDE-", 8));

        PrintedPaper.Read(LabelPdf.Render([new PieceLabel(serial, serial, [])]), "Label with the longest serial").Says(serial);
        Assert.Throws<ArgumentException>(() => LabelPdf.Render([new PieceLabel(serial + "X", "x", [])]));
    }
}
