using Coilwright.Papers.Sheets;
using Coilwright.Papers.Shipping;
using Coilwright.Papers.Spec;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Shipping;

public sealed class CertificateOfTestTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", Date: new DateOnly(2026, 3, 9));
    private static readonly DateTimeOffset s_tested = new(2026, 3, 9, 10, 30, 0, TimeSpan.Zero);
    private static readonly UsedInstrument[] s_instruments =
    [
        new UsedInstrument("bench meter 2", "±0.1 % of the reading (95 %), its sheet", new DateOnly(2025, 11, 4)),
        new UsedInstrument("bridge"),
    ];

    /// <summary>How a caller makes a piece: readings with the limits of its recipe at 20 °C.</summary>
    private static CertifiedPiece Piece(string serial, double ohmAt30C = 6400, bool passes = true) =>
        new(
            serial,
            "Harbour bridge",
            "C",
            [
                new CertifiedReading(
                    new PieceReading("dcResistance", ohmAt30C)
                    {
                        TemperatureC = 30,
                        Instrument = "bench meter 2",
                        UncertaintyPart = 0.001,
                    },
                    5932.8,
                    6427.2
                ),
                new CertifiedReading(new PieceReading("inductance", 2.43) { AtHz = 1000, Instrument = "bridge" }, 2.256, 2.544),
                new CertifiedReading(new PieceReading("q", 2.2) { AtHz = 1000, Instrument = "bridge" }),
            ],
            passes,
            passes ? "pass" : "fail: ohms",
            "Marta",
            s_tested
        );

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void One_piece_states_readings_limits_verdict_who_when_and_with_what(PaperSize size)
    {
        PrintedPaper paper = PrintedPaper.Of(
            CertificateOfTest.Of(new CertificateContent("HB-023", [Piece("HB-023")], s_instruments), s_heading, TimeZoneInfo.Utc),
            size
        );

        Assert.Equal(1, paper.Pages);
        // 6,400 Ω at 30 °C over 1.0393 is 6,158 Ω.
        paper.Says(
            "Certificate of test",
            "Verdict pass",
            "6.158 kΩ",
            "5.933 kΩ – 6.427 kΩ",
            "inside",
            "no limit",
            "±0.1 %",
            "30.0 °C",
            "Marta",
            "2026-03-09 10:30",
            "Harbour bridge,",
            "revision C",
            "its sheet",
            "2025-11-04",
            "not known",
            "no calibration certificate",
            "Follow the product's"
        );
        Assert.DoesNotContain("Revision", paper.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void A_shipment_runs_over_pages_with_its_headings_on_each_and_loses_no_serial(PaperSize size)
    {
        string[] serials = [.. Enumerable.Range(1, 60).Select(number => $"HB-{number:000}")];

        PrintedPaper paper = PrintedPaper.Of(
            CertificateOfTest.Of(
                new CertificateContent(
                    "Order 118",
                    [.. serials.Select(serial => Piece(serial, passes: serial != "HB-007"))],
                    s_instruments
                ),
                s_heading,
                TimeZoneInfo.Utc
            ),
            size
        );

        Assert.InRange(paper.Pages, 2, 5);
        paper.Says([
            .. serials,
            "59 of 60 pass",
            "Harbour bridge, revision C",
            "5.933 kΩ – 6.427 kΩ",
            "6.158 kΩ",
            ", read",
            "fail: ohms",
            $"page {paper.Pages} of {paper.Pages}",
        ]);
        Assert.Equal(
            paper.Sizes.Where(one => one.Word.StartsWith("HB-", StringComparison.Ordinal)).Select(one => one.Page).Distinct(),
            paper.Sizes.Where(one => one.Word == "serial").Select(one => one.Page)
        );
    }

    [Fact]
    public void The_charge_of_the_magnets_is_told_once_for_all_that_are_charged_alike()
    {
        CertifiedPiece[] pieces =
        [
            Piece("HB-001") with
            {
                Charge = "charged full",
            },
            Piece("HB-002") with
            {
                Charge = "knocked down to 900 G at 1.00 mm",
            },
            Piece("HB-003") with
            {
                Charge = "charged full",
            },
            Piece("HB-004"),
        ];
        TextPart[] told =
        [
            .. CertificateOfTest
                .Of(new CertificateContent("Order 119", pieces, s_instruments), s_heading, TimeZoneInfo.Utc)
                .Parts.SkipWhile(part => part is not TitlePart { Text: "Magnets" })
                .Skip(1)
                .TakeWhile(part => part is TextPart)
                .Cast<TextPart>(),
        ];
        Assert.Equal(["HB-001, HB-003: charged full.", "HB-002: knocked down to 900 G at 1.00 mm."], told.Select(part => part.Text));
        Assert.DoesNotContain(
            CertificateOfTest.Of(new CertificateContent("Order 120", [Piece("HB-005")], s_instruments), s_heading, TimeZoneInfo.Utc).Parts,
            part => part is TitlePart { Text: "Magnets" }
        );
    }

    [Fact]
    public void Pieces_that_were_asked_different_things_stand_reading_by_reading()
    {
        CertifiedPiece less = Piece("HB-002") with { Readings = [.. Piece("HB-002").Readings.Take(1)] };

        TablePart readings = CertificateOfTest
            .Of(new CertificateContent("Order 118", [Piece("HB-001"), less], s_instruments), s_heading, TimeZoneInfo.Utc)
            .Parts.OfType<TablePart>()
            .First();

        Assert.Equal(["HB-001", "HB-001", "HB-001", "HB-002"], readings.Rows.Select(row => row[0]));
    }

    // Upper limit 6,427.2 Ω; the meter's 0.1 % is 6.4 Ω.
    [Theory]
    [InlineData(6422.0, "inside, by less than the uncertainty")]
    [InlineData(6430.0, "outside, by less than the uncertainty")]
    [InlineData(6400.0, "inside")]
    [InlineData(6500.0, "outside")]
    public void What_the_instrument_cannot_tell_is_said(double ohmAt20C, string words)
    {
        Sheet sheet = CertificateOfTest.Of(
            new CertificateContent("HB-023", [Piece("HB-023", ohmAt20C * 1.0393, passes: false)], s_instruments),
            s_heading,
            TimeZoneInfo.Utc
        );

        Assert.Equal(words, sheet.Parts.OfType<TablePart>().First().Rows[0][5]);
    }

    [Fact]
    public void What_may_not_be_certified_is_told_all_at_once()
    {
        CertifiedPiece wrong = Piece("HB-023", ohmAt30C: 8000) with { Person = " " };
        CertificateContent content = new("Order 118", [wrong, Piece("hb-023") with { Readings = [] }], [s_instruments[0]]);

        Assert.Equal(
            ["pieces", "pieces[0].person", "pieces[0].verdict", "instruments", "pieces[1].readings"],
            content.Check().Select(problem => problem.Field)
        );
        Assert.Equal("pieces", Assert.Single(new CertificateContent("x", [], []).Check()).Field);
        Assert.Throws<ArgumentException>(() => CertificateOfTest.Of(content, s_heading, TimeZoneInfo.Utc));
    }
}
