using Coilwright.Papers.Repairs;
using Coilwright.Papers.Sheets;
using Coilwright.Papers.Spec;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Repairs;

public sealed class RepairReportTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", "C", new DateOnly(2026, 11, 20));

    /// <summary>How a caller makes the report of story 24: 7.26 kΩ at dispatch, open now; and an inductance that stayed.</summary>
    private static readonly RepairContent s_content = new(
        "HB-023",
        "No sound since last week.",
        [
            new RepairReading(
                new PieceReading("dcResistance", 7260) { TemperatureC = 20, UncertaintyPart = 0.001 },
                new PieceReading("dcResistance", double.NaN) { Flag = "open", TemperatureC = 22 }
            ),
            new RepairReading(
                new PieceReading("inductance", 2.40) { AtHz = 1000, UncertaintyPart = 0.005 },
                new PieceReading("inductance", 2.41) { AtHz = 1000, UncertaintyPart = 0.005 }
            ),
        ],
        "open at the finish joint"
    )
    {
        Customer = "Quay Street Guitars",
        Recipe = "Harbour bridge",
        Dispatched = new DateOnly(2026, 3, 9),
        CameBack = new DateOnly(2026, 11, 16),
        Done = ["Finish joint remade", "Tested as new: 7.25 kΩ at 20 °C"],
        Cost = "0, warranty",
        Answer = "The joint at the finish lead had opened.\nWe remade it and tested the pickup as new.",
    };

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Then_now_verdict_work_cost_and_answer_stand_on_one_page(PaperSize size)
    {
        PrintedPaper paper = PrintedPaper.Of(RepairReport.Of(s_content, s_heading), size);

        Assert.Equal(1, paper.Pages);
        paper.Says(
            "Repair report",
            "open at the finish joint",
            "No sound since last week.",
            "7.260 kΩ",
            "open (read at 22.0 °C)",
            "inductance at 1.00 kHz",
            "+0.4 %",
            "Customer",
            "Quay Street Guitars",
            "Dispatched",
            "2026-03-09",
            "Finish joint remade",
            "Cost: 0, warranty",
            "We remade it",
            "Old celluloid",
            "Follow the product's"
        );
    }

    /// <summary>8.314 kΩ at 30 °C is 8.000 kΩ at 20 °C (story 2), so nothing has changed.</summary>
    [Fact]
    public void Both_sides_stand_at_20_degrees_and_a_change_is_weighed_against_the_uncertainty()
    {
        PieceReading warm = new("dcResistance", 8314.4) { TemperatureC = 30, UncertaintyPart = 0.001 },
            cold = new("dcResistance", 8000) { TemperatureC = 20, UncertaintyPart = 0.001 };
        RepairContent content = s_content with
        {
            Readings =
            [
                new RepairReading(cold, warm),
                new RepairReading(cold, warm with { Si = 8480 }),
                new RepairReading(cold, warm with { UncertaintyPart = null }),
                new RepairReading(null, cold),
            ],
        };

        IReadOnlyList<IReadOnlyList<string>> rows = RepairReport.Of(content, s_heading).Parts.OfType<TablePart>().Single().Rows;

        Assert.Equal(("+0.0 %", "no"), (rows[0][3], rows[0][4]));
        Assert.Equal(("+2.0 %", "yes"), (rows[1][3], rows[1][4]));
        Assert.Equal("not stated", rows[2][4]);
        Assert.Equal(("not read", "–"), (rows[3][1], rows[3][3]));
    }

    [Fact]
    public void Every_wrong_entry_is_told_at_once()
    {
        RepairContent wrong = new(
            "",
            " ",
            [new RepairReading(null, null), new RepairReading(new PieceReading("q", 2), new PieceReading("inductance", 2))],
            ""
        );

        Assert.Equal(["serial", "complaint", "verdict", "readings[0]", "readings[1]"], wrong.Check().Select(problem => problem.Field));
        Assert.Throws<ArgumentException>(() => RepairReport.Of(wrong, s_heading));
    }
}
