using Coilwright.Workshop.SetUp;

namespace Coilwright.Tests.Commands;

/// <summary>Every command that shows a step prints the cautions of that step, and of no other bath.</summary>
public sealed class CautionsAtTheTerminalTests
{
    private static readonly string[] s_baths = [Cautions.HotWax, Cautions.Vapour, Cautions.Hardener];

    [Theory]
    [InlineData("wax", Cautions.HotWax)]
    [InlineData("paraffin", Cautions.HotWax)]
    [InlineData("beeswax", Cautions.HotWax)]
    [InlineData("lacquer", Cautions.Vapour)]
    [InlineData("epoxy", Cautions.Hardener, Cautions.Vapour)]
    public async Task A_basket_is_warned_of_by_what_is_in_the_bath(string kind, params string[] wanted)
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder, kind);
        await PieceAsync(shop);
        await DoneAsync("piece", "step", "P-1", "magnets", "--shop", shop);
        string went = await DoneAsync("basket", "in", "K1", "--pieces", "P-1", "--bath", "60C", "--lot", "W-3", "--shop", shop),
            read = await DoneAsync("basket", "read", "K1", "--bath", "61C", "--shop", shop);
        await Task.Delay(TimeSpan.FromSeconds(1.1), TestContext.Current.CancellationToken); // the shortest time that a recipe may ask for
        string came = await DoneAsync("basket", "out", "K1", "--shop", shop);
        Assert.All((string[])[went, read, came], output =>
        {
            Assert.Equal(wanted.Order(), s_baths.Where(text => output.Contains(text, StringComparison.Ordinal)).Order());
            Assert.Contains(Cautions.ClosingLine, output, StringComparison.Ordinal);
        });
    }

    [Fact]
    public async Task Every_command_of_a_step_warns_of_it_and_ends_with_the_closing_line()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder, "wax");
        Told(
            await DoneAsync("stock", "measure", "0117", "--length", "10m", "--resistance", "56.2", "--temperature", "23C", "--shop", shop),
            Cautions.For(Job.MeasuringWire)
        );
        Told(await DoneAsync("batch", "run", "B-7", "--shop", shop), Cautions.For(Job.Winding));
        Told(await DoneAsync("batch", "note", "B-7", "release", "--note", "right", "--shop", shop), Cautions.For(Job.Winding));
        Told(await PieceAsync(shop), Cautions.For(Job.Assembly));
        Told(
            await DoneAsync("piece", "step", "P-1", "magnets", "--charge", "full", "--charger", "coil charger 2", "--shop", shop),
            Cautions.For(Job.Charging)
        );
        Told(await DoneAsync("piece", "charge", "P-1", "--charge", "full", "--why", "again", "--shop", shop), Cautions.For(Job.Charging));
        Told(await DoneAsync("ink", "mix", "I-1", "--lots", "A-1", "--room", "20C", "--shop", shop), Cautions.For(Job.Marking));
        Told(await DoneAsync("wind", RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json")), Cautions.For(Job.Winding));
    }

    [Fact]
    public async Task Marking_warns_of_vapour_and_hardener()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder, "none");
        await PieceAsync(shop);
        await DoneAsync("piece", "step", "P-1", "magnets", "--shop", shop);
        await DoneAsync("ink", "mix", "I-1", "--lots", "A-1", "--room", "20C", "--shop", shop);
        Told(await DoneAsync("piece", "step", "P-1", "marking", "--mix", "I-1", "--shop", shop), Cautions.For(Job.Marking));
    }

    private static void Told(string output, IReadOnlyList<string> cautions)
    {
        Assert.All(cautions, text => Assert.Contains(text, output, StringComparison.Ordinal));
        Assert.Contains(Cautions.ClosingLine, output, StringComparison.Ordinal);
    }

    private static Task<string> PieceAsync(string shop) =>
        DoneAsync("piece", "make", "--coils", "B-7/1,B-8/1", "--magnet-lot", "M-5", "--serial", "P-1", "--shop", shop);

    /// <summary>A shop with two coils of a recipe that is potted as asked, for a second.</summary>
    private static async Task<string> ShopAsync(TestFolder folder, string kind)
    {
        string shop = folder.PathOf("shop.db"),
            twin =
                await File.ReadAllTextAsync(
                    RepositoryFiles.PathOf("demo", "recipes", "breakwater-twin.json"),
                    TestContext.Current.CancellationToken
                );
        string own = twin.Replace("\"kind\": \"wax\"", $"\"kind\": \"{kind}\"", StringComparison.Ordinal)
            .Replace("\"time\": \"10 min\"", "\"time\": \"1 s\"", StringComparison.Ordinal);
        await DoneAsync("recipe", "add", folder.Write("twin.json", own), "--shop", shop);
        await DoneAsync("recipe", "release", "Breakwater twin", "--shop", shop);
        await DoneAsync("rules", "set", RepositoryFiles.PathOf("demo", "rules", "lantern-quay.json"), "--shop", shop);
        await DoneAsync("stock", "add", "0117", "--gauge", "AWG 42", "--lot", "L-31", "--shop", shop);
        foreach ((string name, string coil, string tags) in new[] { ("B-7", "slug", "BS-"), ("B-8", "screw", "BC-") })
        {
            await DoneAsync(
                "batch",
                "start",
                "Breakwater twin",
                "--name",
                name,
                "--quantity",
                "4",
                "--coil",
                coil,
                "--tags",
                tags,
                "--spool",
                "0117",
                "--shop",
                shop
            );
            await DoneAsync("read", name, "3.90k", "--room", "20C", "--shop", shop);
        }

        return shop;
    }

    private static async Task<string> DoneAsync(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);
        Assert.Equal((0, ""), (run.Exit, run.Error));
        return run.Output;
    }
}
