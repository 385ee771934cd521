using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>Coils become pieces: paired, numbered, each coil in one piece only.</summary>
public sealed class AssemblyTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task The_coils_at_hand_are_paired_with_the_least_difference_and_used_ones_are_gone()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        IReadOnlyList<CoilAtHand> coils = await shop.Coils.AtHandAsync(shop.Revision.RecipeId, held: false, Cancel);
        Assert.Equal(8, coils.Count);
        (IReadOnlyList<ProposedPiece> pieces, IReadOnlyList<CoilAtHand> left) = CoilService.Propose(
            (await shop.Shelf.RecipeAsync(shop.Revision.RecipeId, 1, Cancel)).Recipe,
            coils,
            "dcResistance"
        );
        Assert.Empty(left);
        Assert.Equal(["B-7/BS-001", "B-8/BC-001"], pieces[0].Coils.Select(coil => coil.Code)); // 3.92 with 3.95: neighbours in order
        Assert.Equal(0.03 / 3.92, pieces[0].Difference!.Value, 1e-6);
        Assert.Equal(4, pieces.Count);

        await shop.MakeAsync(1);
        Assert.Equal(6, (await shop.Coils.AtHandAsync(shop.Revision.RecipeId, held: false, Cancel)).Count);
    }

    [Fact]
    public async Task Serials_follow_the_shops_pattern_and_are_used_once()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        Assert.Equal("2610-001", (await shop.MakeAsync(1)).Serial); // 2 March 2026 lies in week 10
        Assert.Equal("2610-002", (await shop.MakeAsync(2)).Serial);

        (IReadOnlyList<Problem> problems, PieceRecord? piece) = await shop.Assembly.MakeAsync(
            PieceShop.Entry("B-7/3", "B-8/3") with
            {
                Serial = "2610-002",
            },
            Cancel
        );

        Assert.Null(piece);
        Assert.Contains("already", Assert.Single(problems, problem => problem.Field == "serial").Message, StringComparison.Ordinal);
        Assert.Equal("2610-003", (await shop.MakeAsync(3)).Serial); // nothing was half kept
    }

    [Fact]
    public async Task A_coil_in_two_pieces_is_refused_with_the_piece_that_has_it()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        await shop.MakeAsync(1);
        (IReadOnlyList<Problem> problems, PieceRecord? piece) = await shop.Assembly.MakeAsync(PieceShop.Entry("B-7/1", "B-8/2"), Cancel);
        Assert.Null(piece);
        Assert.Contains("BS-001 stands in piece 2610-001", Assert.Single(problems).Message, StringComparison.Ordinal);
        Assert.Single(await shop.Shop.Records.Pieces.NewestAsync(10, Cancel));
    }

    [Fact]
    public async Task Every_problem_of_an_assembly_is_told_at_once()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        (IReadOnlyList<Problem> problems, _) = await shop.Assembly.MakeAsync(
            PieceShop.Entry("B-7/1", "B-7/2", "B-9/4") with
            {
                MagnetLot = "",
                Serial = "Größe",
                Options = ["cover nickel"],
            },
            Cancel
        );
        Assert.Contains(problems, problem => problem.Message.Contains("no such coil", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem.Message.Contains("2 coils for one place: slug", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem.Message.Contains("the screw coil is missing", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem.Field == "serial");
        Assert.Contains(problems, problem => problem.Field == "options");
    }

    [Fact]
    public async Task The_lot_of_the_magnets_may_stay_empty()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        (IReadOnlyList<Problem> problems, PieceRecord? piece) = await shop.Assembly.MakeAsync(
            PieceShop.Entry("B-7/1", "B-8/1") with
            {
                MagnetLot = "",
            },
            Cancel
        );
        Assert.Empty(problems);
        Assert.DoesNotContain(await shop.Shop.Records.Pieces.PartsAsync([piece!.Id], Cancel), part => part.Kind == PartKind.Magnets);
    }

    [Fact]
    public async Task Sent_twice_it_is_one_piece()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        AssemblyEntry entry = PieceShop.Entry("B-7/1", "B-8/1");
        PieceRecord first = (await shop.Assembly.MakeAsync(entry, Cancel)).Piece!,
            second = (await shop.Assembly.MakeAsync(entry, Cancel)).Piece!;
        Assert.Equal(first, second);
        Assert.Equal(2, (await shop.Shop.Records.Pieces.PartsAsync([first.Id], Cancel)).Count(part => part.Kind == PartKind.Coil));
    }

    [Fact]
    public async Task A_coil_taken_out_can_go_into_another_piece_and_stays_in_the_history()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        PieceRecord piece = await shop.MakeAsync(1);
        Assert.Equal(
            ["new", "reason"],
            (await shop.Assembly.ReplaceCoilAsync(Guid.NewGuid(), piece.Serial, "BS-001", "B-8/2", "", "Ines", Cancel)).Select(problem =>
                problem.Field
            )
        );
        Assert.Empty(
            await shop.Assembly.ReplaceCoilAsync(Guid.NewGuid(), piece.Serial, "BS-001", "B-7/2", "start lead broke off", "Ines", Cancel)
        );

        PieceSnapshot life = (await shop.Shelf.FindAsync(piece.Serial, Cancel))!;
        Assert.Equal(["BC-001", "BS-002"], life.PartsIn.Where(part => part.Kind == PartKind.Coil).Select(part => part.Tag).Order());
        Assert.Equal(3, life.Parts.Count(part => part.Kind == PartKind.Coil));
        Assert.Contains(await shop.Coils.AtHandAsync(shop.Revision.RecipeId, held: false, Cancel), coil => coil.Code == "B-7/BS-001");
        Assert.NotEmpty((await shop.Assembly.MakeAsync(PieceShop.Entry("B-7/2", "B-8/2"), Cancel)).Problems);
    }
}
