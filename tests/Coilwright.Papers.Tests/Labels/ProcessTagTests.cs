using System.Text.RegularExpressions;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Tests.Labels;

public sealed class ProcessTagTests
{
    private static readonly TimeZoneInfo s_zone = TimeZoneInfo.Utc;

    /// <summary>Story 10: in at 14:05, 10 min at least, limit 65 °C.</summary>
    private static readonly PottingBasket s_basket = new(
        "B-031",
        "wax",
        "W-7 (80/20)",
        [.. Enumerable.Range(1, 24).Select(number => $"HB-{number:000}")],
        At(14, 5),
        TimeSpan.FromMinutes(10),
        65,
        "vulcanised fibre"
    );

    /// <summary>Story 11: mixed 09:10 at 28 °C, the sheet says 8 h and 6 days at 20 °C.</summary>
    private static readonly InkMix s_mix = new(
        "M-12",
        "ink 4471, hardener 90-2",
        At(9, 10),
        new CureRule(),
        TimeSpan.FromHours(8),
        TimeSpan.FromDays(6),
        28
    );

    private static DateTimeOffset At(int hour, int minute) => new(2026, 3, 2, hour, minute, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Tags_say_times_limits_lots_and_cautions(PaperSize size)
    {
        PrintedPaper tags = PrintedPaper.Read(
            ProcessTagPdf.Render([ProcessTags.Of(s_basket, "BASKET/B-031", s_zone), ProcessTags.Of(s_mix, "MIX/M-12", s_zone)], size),
            $"Tags {size}"
        );

        Assert.Equal(1, tags.Pages);
        tags.Says(
            "Basket, wax",
            "B-031",
            "Earliest out",
            "2026-03-02 14:15",
            "2026-03-02 14:05",
            "W-7 (80/20)",
            "24",
            "Never above",
            "65.0 °C, limit of vulcanised",
            "Molten wax burns",
            "Ink mix",
            "M-12",
            "Discard at",
            "2026-03-02 13:46",
            "28.0 °C",
            "ink 4471, hardener 90-2",
            "3.4 days",
            "rate doubles per 10 °C",
            "switched off)",
            "hardeners can cause permanent allergy",
            "Follow the product's safety data sheet"
        );
    }

    /// <summary>
    /// A wrapped fact is read wrongly at arm's length: the usual ones stand on one line each, as does the line at the foot.
    /// </summary>
    [Fact]
    public void Facts_and_the_closing_line_stand_on_one_line_each()
    {
        string pdf = Path.GetTempFileName();
        File.WriteAllBytes(pdf, ProcessTagPdf.Render([ProcessTags.Of(s_mix, "MIX/M-12", s_zone)]));

        string[] lines =
        [
            .. PrintedPaper.Run("pdftotext", "-layout", pdf, "-").Split('\n').Select(line => Regex.Replace(line.Trim(), " +", " ")),
        ];

        File.Delete(pdf);
        string[] wanted =
        [
            "Mixed at 2026-03-02 09:10, 28.0 °C",
            "Cure takes 3.4 days from the print",
            "Cured at 2026-03-05 19:52, if printed when mixed",
            Cautions.ClosingLine,
        ];
        Assert.All(wanted, line => Assert.Contains(line, lines));
        // a number is never parted from its unit
        Assert.DoesNotContain(lines, line => Regex.IsMatch(line, " \\d+$") || line.StartsWith("°C", StringComparison.Ordinal));
    }

    [Fact]
    public void The_cure_is_told_for_a_print_and_the_rule_may_be_off()
    {
        ProcessTag tag = ProcessTags.Of(
            s_mix with
            {
                Rule = new CureRule(DoublesPer10C: false),
            },
            "MIX/M-12",
            s_zone,
            printedUtc: At(12, 0)
        );

        Assert.Equal("2026-03-02 17:10", tag.Key.Meaning); // 09:10 and 8 h as they stand
        Assert.Contains(("Printed at", "2026-03-02 12:00"), tag.Facts);
        Assert.Contains(("Cured at", "2026-03-08 12:00, 6.0 days later"), tag.Facts);
        Assert.Contains(tag.Facts, fact => fact.Meaning.Contains("switched off", StringComparison.Ordinal));
    }

    [Fact]
    public void The_screen_says_the_same()
    {
        string html = ProcessTagHtmlWriter.Render([ProcessTags.Of(s_basket, "BASKET/B-031", s_zone)]);

        Assert.All(
            (string[])["B-031", "2026-03-02 14:15", "W-7 (80/20)", "limit of vulcanised fibre", "Molten wax burns", "class=\"qrcode\""],
            word => Assert.Contains(word, html, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Many_words_are_made_smaller_and_too_many_are_refused_and_never_cut()
    {
        string lots = string.Join(", ", Enumerable.Range(1, 20).Select(number => $"lot-{number:000}"));
        PrintedPaper tag = PrintedPaper.Read(
            ProcessTagPdf.Render([ProcessTags.Of(s_mix with { Lots = lots }, "MIX/M-12", s_zone)]),
            "Tag with many lots"
        );

        tag.Says([.. Enumerable.Range(1, 20).Select(number => $"lot-{number:000}")]);
        Assert.Throws<ArgumentException>(() =>
            ProcessTagPdf.Render([ProcessTags.Of(s_mix with { Lots = string.Join(", ", Enumerable.Repeat(lots, 20)) }, "MIX/M-12", s_zone)])
        );
    }

    [Fact]
    public void The_codes_of_a_printed_sheet_are_read_by_an_independent_reader()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-tags-");
        string pdf = Path.Combine(folder.FullName, "tags.pdf"),
            picture = Path.Combine(folder.FullName, "tags");
        File.WriteAllBytes(
            pdf,
            ProcessTagPdf.Render([ProcessTags.Of(s_basket, "BASKET/B-031", s_zone), ProcessTags.Of(s_mix, "MIX/M-12", s_zone)])
        );

        PrintedPaper.Run("pdftoppm", "-r", "300", "-png", "-singlefile", pdf, picture);
        string[] read =
        [
            .. PrintedPaper
                .Run("zbarimg", "-q", picture + ".png")
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Order(StringComparer.Ordinal),
        ];

        folder.Delete(recursive: true);
        Assert.Equal(["QR-Code:BASKET/B-031", "QR-Code:MIX/M-12"], read);
    }
}
