using Coilwright.Workshop.Tests.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Tracing;

/// <summary>Anything is found by its name or a part of it, by kind, and says how it matched.</summary>
public sealed class NameSearchTests
{
    private static CancellationToken Cancel => PieceShop.Cancel;

    [Fact]
    public async Task A_batch_is_found_by_its_name_and_a_coil_by_its_number()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        await shop.MakeAsync(1);

        SearchAnswer batch = await Search(shop).FindAsync("b-7", Cancel),
            coil = await Search(shop).FindAsync("bs-1", Cancel),
            unwound = await Search(shop).FindAsync("B-7/BS-009", Cancel);

        Assert.Equal(("batch", "B-7", shop.Slugs.Id, NameMatch.Name), (batch.Only!.Kind, batch.Only.Name, batch.Only.Id, batch.Only.Match));
        Assert.Single(batch.Only.Pieces);
        Assert.Equal(("coil", "BS-001", NameMatch.Number), (coil.Only!.Kind, coil.Only.Tag, coil.Only.Match));
        Assert.Contains("batch B-7, Breakwater twin A, read 2026-", coil.Only.Words, StringComparison.Ordinal);
        Assert.Contains("not wound yet", unwound.Only!.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("break", "recipe", "Breakwater twin")]
    [InlineData("PELL", "customer", "K-031")]
    [InlineData("inder 2", "winder", "Winder 2")]
    [InlineData("7/bs-00", "coil", "B-7/BS-001")]
    public async Task A_part_of_a_name_finds_it_and_says_so(string asked, string kind, string name)
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        Assert.Empty(await shop.Shop.Machines.AddAsync(Guid.NewGuid(), "Winder 2", "Joss", Cancel));
        await shop.MakeAsync(1);

        SearchAnswer answer = await Search(shop).FindAsync(asked, Cancel);

        TraceHit hit = answer.Hits.First(one => one.Kind == kind);
        Assert.Equal((name, NameMatch.Part), (hit.Name, hit.Match));
        Assert.Null(answer.Only); // a part never opens a page by itself
        Assert.All(answer.Hits.Where(one => one.Kind == "winder"), one => Assert.Single(one.Pieces));
    }

    [Fact]
    public async Task Hits_of_several_kinds_are_listed_by_kind_and_serials_are_found_by_their_beginning()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        string one = (await shop.MakeAsync(1)).Serial,
            two = (await shop.MakeAsync(2)).Serial;
        SearchAnswer answer = await Search(shop).FindAsync(one[..3], Cancel),
            all = await Search(shop).FindAsync("B", Cancel);
        Assert.Equal([one, two], answer.Hits.Where(hit => hit.Kind == "piece").Select(hit => hit.Name));
        Assert.Equal(
            all.Hits.Select(hit => TraceService.PlaceOf(hit.Kind)).Order(),
            all.Hits.Select(hit => TraceService.PlaceOf(hit.Kind))
        );
    }

    [Fact]
    public async Task When_nothing_is_found_near_names_are_given()
    {
        await using PieceShop shop = await PieceShop.StartAsync();
        SearchAnswer slip = await Search(shop).FindAsync("Brekwater twin", Cancel),
            nothing = await Search(shop).FindAsync("no such thing", Cancel),
            empty = await Search(shop).FindAsync(" ", Cancel);
        Assert.Empty(slip.Hits);
        Assert.Equal("Breakwater twin", slip.Near[0]);
        Assert.Empty(nothing.Near);
        Assert.Equal((0, 0), (empty.Hits.Count, empty.Near.Count));
    }

    private static NameSearch Search(PieceShop shop) => new(shop.Shop.Records, shop.Trace);
}
