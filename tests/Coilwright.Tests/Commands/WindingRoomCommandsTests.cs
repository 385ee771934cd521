using System.Text.Json;

namespace Coilwright.Tests.Commands;

/// <summary>The shop's winders, spools and batch events on the command line.</summary>
public sealed class WindingRoomCommandsTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");
    private static readonly string s_hand = RepositoryFiles.PathOf("demo", "machines", "hand-winder.json");

    /// <summary>Story 12: the marked test of 100 turns corrects the stop of a machine of the shop.</summary>
    [Fact]
    public async Task A_marked_test_kept_in_the_shop_moves_the_counter_stop()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db"),
            five = folder.Write(
                "five.json",
                (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken)).Replace(
                    "\"turns\": 8000",
                    "\"turns\": 5000",
                    StringComparison.Ordinal
                )
            );
        await DoneAsync("machine", "keep", s_hand, "--shop", shop);
        await DoneAsync("machine", "test", "winder 1", "--turns", "100.6", "--counted", "100", "--shop", shop);
        CommandRun wind = await CommandRun.Of("wind", five, "--machine", "Winder 1", "--shop", shop, "--json"),
            unknown = await CommandRun.Of("wind", five, "--machine", "Winder 9", "--shop", shop);

        using JsonDocument document = JsonDocument.Parse(wind.Output);
        Assert.Equal(4970, document.RootElement.GetProperty("coils")[0].GetProperty("counterStop").GetDouble());
        Assert.Equal(2, unknown.Exit);
        Assert.Contains("Winder 1", unknown.Error, StringComparison.Ordinal);
    }

    /// <summary>The sheet of a batch is of its winder: 8,000 real turns on a counter × 1.006 are 7,952.</summary>
    [Fact]
    public async Task The_sheet_of_a_batch_is_of_its_winder_and_spool()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await DoneAsync("machine", "keep", s_hand, "--shop", shop);
        await DoneAsync("machine", "test", "Winder 1", "--turns", "100.6", "--counted", "100", "--shop", shop);
        await DoneAsync("recipe", "add", s_harbour, "--shop", shop);
        await DoneAsync("recipe", "release", "Harbour bridge", "--shop", shop);
        await DoneAsync("stock", "add", "0117", "--gauge", "AWG 42", "--shop", shop);
        await DoneAsync(
            "batch",
            "start",
            "Harbour bridge",
            "--name",
            "H-1",
            "--quantity",
            "5",
            "--tags",
            "H-",
            "--spool",
            "0117",
            "--machine",
            "winder 1",
            "--shop",
            shop
        );

        CommandRun plain = await CommandRun.Of("wind", "--batch", "h-1", "--shop", shop),
            json = await CommandRun.Of("wind", "--batch", "H-1", "--shop", shop, "--json");
        CommandRun html = await CommandRun.Of("wind", "--batch", "H-1", "--shop", shop, "--html"),
            neither = await CommandRun.Of("wind", "--shop", shop),
            none = await CommandRun.Of("wind", "--batch", "H-2", "--shop", shop),
            recipe = await CommandRun.Of("wind", s_harbour);

        Assert.Equal((0, 0, 0, 2, 2, 0), (plain.Exit, json.Exit, html.Exit, neither.Exit, none.Exit, recipe.Exit));
        Assert.All(["on Winder 1", "Batch H-1: 5, H-001 to H-005", "0117", "7,952"], wanted =>
            Assert.Contains(wanted, plain.Output, StringComparison.Ordinal)
        );
        Assert.Empty(Schemas.Complaints("setup.json", json.Output));
        using JsonDocument document = JsonDocument.Parse(json.Output);
        Assert.Equal(7952, document.RootElement.GetProperty("coils")[0].GetProperty("counterStop").GetDouble());
        Assert.Equal("0117", document.RootElement.GetProperty("batch").GetProperty("spool").GetString());
        Assert.Contains("<p class=\"stop\">7,952</p>", html.Output, StringComparison.Ordinal);
        Assert.Contains("For no winder", recipe.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_spool_is_measured_used_and_says_whether_it_lasts()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await DoneAsync("recipe", "add", s_harbour, "--shop", shop);
        await DoneAsync("recipe", "release", "Harbour bridge", "--shop", shop);
        await DoneAsync("stock", "add", "0117", "--gauge", "AWG 42", "--tare", "310g", "--shop", shop);
        await DoneAsync("stock", "measure", "0117", "--length", "10.00m", "--resistance", "56.2", "--temperature", "23.5C", "--shop", shop);
        await DoneAsync("stock", "weigh", "0117", "--gross", "344g", "--shop", shop);
        CommandRun three =
                await CommandRun.Of("stock", "show", "0117", "--recipe", "Harbour bridge", "--coils", "3", "--json", "--shop", shop),
            list = await CommandRun.Of("stock", "list", "--json", "--shop", shop),
            wrong = await CommandRun.Of("stock", "add", "0117", "--gauge", "AWG 42", "--shop", shop);

        Assert.Equal((1, 0, 2), (three.Exit, list.Exit, wrong.Exit)); // 34 g are one coil, not three
        Assert.Empty(Schemas.Complaints("stock.json", three.Output));
        Assert.Empty(Schemas.Complaints("stock.json", list.Output));
        using JsonDocument document = JsonDocument.Parse(three.Output);
        Assert.Equal(
            5.544,
            document.RootElement.GetProperty("spools")[0].GetProperty("resistancePerLength").GetProperty("value").GetDouble(),
            0.0005
        );
    }

    [Fact]
    public async Task A_break_is_noted_and_its_choices_are_told()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await DoneAsync("recipe", "add", s_harbour, "--shop", shop);
        await DoneAsync("recipe", "release", "Harbour bridge", "--shop", shop);
        await DoneAsync("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "5", "--shop", shop);
        await DoneAsync("batch", "note", "H-1", "begin", "--shop", shop);
        CommandRun broke = await CommandRun.Of("batch", "note", "H-1", "break", "--counter", "6100", "--shop", shop),
            early = await CommandRun.Of("batch", "note", "H-1", "release", "--shop", shop),
            run = await CommandRun.Of("batch", "run", "H-1", "--shop", shop);

        Assert.Matches(@"Scrap: 2\d g of wire and 5\.1 min are lost", broke.Output);
        Assert.Contains("inductance falls to 58 %", broke.Output, StringComparison.Ordinal);
        Assert.Equal(2, early.Exit);
        Assert.Contains("C-001 on a winder: broken at 6,100 counted", run.Output, StringComparison.Ordinal);
    }

    private static async Task DoneAsync(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);
        Assert.Equal((0, ""), (run.Exit, run.Error));
    }
}
