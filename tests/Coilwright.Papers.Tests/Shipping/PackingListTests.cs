using Coilwright.Papers.Sheets;
using Coilwright.Papers.Shipping;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.Shipping;

public sealed class PackingListTests
{
    private static readonly SheetHeading s_heading = new("Tin Shed Pickups", Date: new DateOnly(2026, 3, 9));

    /// <summary>How a caller makes the list: the bound is the sum of every magnet's moment, volume times magnetisation.</summary>
    private static readonly PackingContent s_content = new(
        "PO 4471",
        [.. Enumerable.Range(1, 12).Select(number => new PackedPiece($"HB-{number:000}", "Harbour bridge", "C"))]
    )
    {
        To = ["Quay Street Guitars", "12 Quay Street"],
        MassKg = 1.84,
        MagnetMomentAm2 = 5,
    };

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Pieces_mass_reference_and_the_question_of_magnets_stand_on_one_page(PaperSize size)
    {
        PrintedPaper paper = PrintedPaper.Of(PackingList.Of(s_content, s_heading), size);

        Assert.Equal(1, paper.Pages);
        paper.Says([
            .. s_content.Pieces.Select(piece => piece.Serial),
            "Packing list",
            "Reference",
            "PO 4471",
            "Pieces Mass, packed 12 1.84 kg",
            "Quay Street Guitars",
            "Harbour bridge, revision C",
            "Is the field at 4.5 m (15 ft)",
            "0.00525 G",
            "at most 0.00011 G",
            "at most 0.00125 G",
            "49 CFR 173.21(d)",
            "below that law's limit even if all magnets point one way",
            "ask the carrier",
            "The carrier and the rules in force",
            "Strong magnets pinch",
            "Follow the product's",
        ]);
    }

    /// <summary>A limit is printed only with the law that was read; what was heard second-hand is asked of the carrier.</summary>
    [Fact]
    public void No_limit_is_printed_without_its_law() =>
        Assert.DoesNotContain("0.002 G", PrintedPaper.Of(PackingList.Of(s_content, s_heading)).Text, StringComparison.Ordinal);

    [Fact]
    public void What_is_not_known_is_left_to_be_weighed_and_measured()
    {
        PrintedPaper paper = PrintedPaper.Of(
            PackingList.Of(
                s_content with
                {
                    MassKg = null,
                    MagnetMomentAm2 = null,
                    To = [],
                    Pieces = [new PackedPiece("HB-001", "Harbour bridge", Box: "2") { Set = "Lantern 3, bridge" }],
                },
                s_heading
            )
        );

        paper.Says("set Lantern 3, bridge", "not weighed", "not known: measure the packed box", "ask the carrier", "no. serial recipe box");
    }

    // B at 4.5 m reaches 5.25e-7 T at m = B·r³/2e-7 = 239.2 A·m²: by hand.
    [Theory]
    [InlineData(239.0, "below that law's limit")]
    [InlineData(239.4, "may be forbidden")]
    public void The_answer_turns_where_arithmetic_says(double momentAm2, string words) =>
        Assert.Contains(words, AirFreight.Answer(momentAm2), StringComparison.Ordinal);

    [Fact]
    public void Every_wrong_entry_is_told_at_once()
    {
        PackingContent wrong = new(" ", [new PackedPiece("A-1", "x"), new PackedPiece("a-1", "x")])
        {
            MassKg = -1,
            MagnetMomentAm2 = double.NaN,
        };

        Assert.Equal(["reference", "pieces", "mass", "magnets"], wrong.Check().Select(problem => problem.Field));
        Assert.Throws<ArgumentException>(() => PackingList.Of(wrong, s_heading));
    }
}
