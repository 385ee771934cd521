using Coilwright.Papers.Pdf;
using Coilwright.Papers.SetUp;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.SetUp;

/// <summary>The set-up sheet as PDF, read back by poppler.</summary>
public sealed class SetUpSheetTests
{
    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Everything_that_stands_on_the_screen_stands_on_one_page(PaperSize size)
    {
        PrintedPaper paper = PrintedPaper.Of(SetUpSheet.Of(Example.SetUp).Single(), size);

        Assert.Equal(1, paper.Pages);
        paper.Says(
            "Set-up, coil main",
            "Harbour bridge",
            "Counter stop",
            "8,000",
            "Meter at 23.0 °C",
            "6.25 kΩ",
            "passes from",
            "Mount the",
            "AWG 42 plain enamel",
            "14.0 gf",
            "1,200 rpm",
            "Bare the ends,",
            "cool, measure",
            "If the wire breaks",
            "Tin Shed Pickups",
            Cautions.FineWire,
            Cautions.ClosingLine
        );
        Assert.Contains("8,000", paper.WordsOf(leastMm: 10)); // read from two metres: 1/200 of the distance, common practice, no source
    }

    [Fact]
    public void Each_coil_has_a_sheet_of_its_own_and_one_document_holds_them()
    {
        WindingSetUp two = Example.SetUp with { Coils = [Example.SetUp.Coils[0], Example.SetUp.Coils[0] with { Name = "other" }] };

        PrintedPaper paper = PrintedPaper.Read(SheetPdf.Render(SetUpSheet.Of(two)), "Set-up of two coils");

        Assert.Equal(2, paper.Pages);
        paper.Says("1 of 2", "2 of 2", "coil main", "coil other");
    }
}
