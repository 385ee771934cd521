namespace Coilwright.Tests.Commands;

/// <summary>Sets of matched pieces on the command line and on paper.</summary>
public sealed class SetCommandTests
{
    private static readonly string s_twin = RepositoryFiles.PathOf("demo", "recipes", "breakwater-twin.json");

    [Fact]
    public async Task The_closest_pieces_become_a_set_that_is_shown_traced_and_printed()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        string[] places = ["--place", "neck: Breakwater twin", "--place", "bridge: Breakwater twin +0.1 dB"];
        CommandRun none = await CommandRun.Of([.. (string[])["set", "propose"], .. places[..2], "--shop", shop]),
            found = await CommandRun.Of([.. (string[])["set", "propose"], .. places, "--shop", shop]);
        Assert.Equal((2, 0), (none.Exit, found.Exit));
        Assert.Contains("2 to 4 places", none.Error, StringComparison.Ordinal);
        // P-1 to P-3 read 7.80, 7.88 and 7.94 kΩ; 7.88 over 7.80 is +0.09 dB: meant is +0.1 dB.
        Assert.Contains("1. neck P-1, bridge P-2: 0.01 dB apart, the closest", found.Output, StringComparison.Ordinal);
        Assert.Contains("neck + bridge: in phase, hum cancels", found.Output, StringComparison.Ordinal);
        Assert.Contains("Left in stock by the closest: P-3", found.Output, StringComparison.Ordinal);

        string[] other = ["set", "make", "Lantern 3", "--place", "neck: P-1", "--place", "bridge: P-3 +0.1 dB", "--shop", shop];
        CommandRun refused = await CommandRun.Of(other),
            made = await CommandRun.Of([.. other, "--why", "ordered so"]),
            twice = await CommandRun.Of("set", "make", "Second", "--place", "neck: P-3", "--place", "bridge: P-2", "--shop", shop);
        Assert.Equal((2, 0, 2), (refused.Exit, made.Exit, twice.Exit));
        Assert.Contains("closer ones are at hand: neck P-1, bridge P-2", refused.Error, StringComparison.Ordinal);
        Assert.Contains("P-3 stands in set Lantern 3, bridge already", twice.Error, StringComparison.Ordinal);

        CommandRun show = await CommandRun.Of("set", "show", "lantern 3", "--json", "--shop", shop),
            list = await CommandRun.Of("set", "list", "--shop", shop),
            piece = await CommandRun.Of("piece", "show", "P-1", "--json", "--shop", shop),
            trace = await CommandRun.Of("trace", "Lantern 3", "--json", "--shop", shop);
        Assert.Empty(Schemas.Complaints("set.json", show.Output));
        Assert.Empty(Schemas.Complaints("piece.json", piece.Output));
        Assert.Empty(Schemas.Complaints("trace.json", trace.Output));
        Assert.Contains("\"kind\": \"set\"", trace.Output, StringComparison.Ordinal);
        Assert.Contains("Set Lantern 3: neck P-1, bridge P-3; chosen because: ordered so", list.Output, StringComparison.Ordinal);
        Assert.Contains(
            "set Lantern 3, neck, with bridge P-3",
            (await CommandRun.Of("trace", "P-1", "--shop", shop)).Output,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Lantern 3, neck",
            (await CommandRun.Of("paper", "piece", "spec", "P-1", "--html", "--shop", shop)).Output,
            StringComparison.Ordinal
        );

        Assert.Equal(0, (await CommandRun.Of("set", "leave", "P-3", "--reason", "order cancelled", "--shop", shop)).Exit);
        Assert.Equal(
            (2, 0),
            (
                (await CommandRun.Of("set", "show", "Lantern 3", "--shop", shop)).Exit,
                (await CommandRun.Of("set", "list", "--shop", shop)).Exit
            )
        );
    }

    private static async Task<string> ShopAsync(TestFolder folder)
    {
        string shop = folder.PathOf("shop.db");
        await DoneAsync("recipe", "add", s_twin, "--shop", shop);
        await DoneAsync("recipe", "release", "Breakwater twin", "--shop", shop);
        foreach (
            (string name, string coil, string tags, string[] ohms) in new[]
            {
                ("B-7", "slug", "BS-", (string[])["3.90k", "3.94k", "3.97k"]),
                ("B-8", "screw", "BC-", (string[])["3.90k", "3.94k", "3.97k"]),
            }
        )
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
                "--shop",
                shop
            );
            foreach (string ohm in ohms)
            {
                Assert.Equal(0, (await CommandRun.Of("read", name, ohm, "--room", "20C", "--shop", shop)).Exit);
            }
        }

        foreach (int number in Enumerable.Range(1, 3))
        {
            await DoneAsync(
                "piece",
                "make",
                "--coils",
                FormattableString.Invariant($"B-7/{number},B-8/{number}"),
                "--magnet-lot",
                "M-5",
                "--serial",
                FormattableString.Invariant($"P-{number}"),
                "--shop",
                shop
            );
        }

        return shop;
    }

    private static async Task DoneAsync(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);
        Assert.Equal((0, ""), (run.Exit, run.Error));
    }
}
