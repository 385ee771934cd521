using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Sheets;

public sealed class LongWordsTests
{
    private static readonly string s_long = string.Join(' ', Enumerable.Range(1, 24).Select(number => $"word{number:00}"));

    private static Sheet Made(string words) =>
        new(
            "Kind " + words,
            words,
            new SheetHeading("Shop " + words, "C", new DateOnly(2026, 3, 2)),
            [
                new TitlePart("Title " + words),
                new TextPart("Text " + words),
                new LargePart("Label " + words, "Value " + words, "Note " + words),
                new FiguresPart(
                    [
                        new KeyFigure("First " + words, "Figure " + words, "Said " + words),
                        new KeyFigure("second", "2"),
                        new KeyFigure("third", "3"),
                        new KeyFigure("fourth", "4"),
                    ],
                    3
                ),
                new TablePart(
                    ["one " + words, "two"],
                    [
                        ["cell " + words, "x"],
                        ["y", "last " + words],
                    ],
                    []
                ),
                new StepPart(1, "Step " + words, ["line " + words], ["caution " + words]),
                new CautionPart("Boxed " + words),
            ],
            "CODE-1"
        );

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Long_words_wrap_and_no_word_is_cut_or_printed_on_another(PaperSize size)
    {
        PrintedPaper paper = PrintedPaper.Read(SheetPdf.Render([Made(s_long)], size), $"Long words {size}");

        Assert.Empty(paper.Outside);
        foreach (int number in (int[])[1, 12, 24])
        {
            // Kind, subject, shop; title, text, three of the large part, three of a figure, three of the table, three of the step, the box;
            // and the foot, subject and shop, on every page.
            Assert.Equal(18 + 2 * paper.Pages, paper.Sizes.Count(one => one.Word.StartsWith($"word{number:00}", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void The_check_finds_words_on_one_another()
    {
        // Two sheets' worth of text at one place: a guard that never fails guards nothing.
        Assert.NotEmpty(PrintedPaper.Overlaps([("one", [10, 10, 50, 20]), ("two", [12, 11, 48, 19])]));
        Assert.Empty(PrintedPaper.Overlaps([("one", [10, 10, 50, 20]), ("two", [10, 20, 50, 30])]));
    }
}
