namespace Coilwright.Tests.Commands;

/// <summary>Pieces, tracing, papers and the shop's rules on the command line.</summary>
public sealed class PieceCommandsTests
{
    private static readonly string s_twin = RepositoryFiles.PathOf("demo", "recipes", "breakwater-twin.json");
    private static readonly string s_rules = RepositoryFiles.PathOf("demo", "rules", "lantern-quay.json");

    [Fact]
    public async Task Two_coils_become_a_piece_that_is_traced_both_ways_and_has_its_papers()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        CommandRun proposed = await CommandRun.Of("piece", "propose", "Breakwater twin", "--shop", shop);
        Assert.Equal(0, proposed.Exit);
        Assert.Contains("B-7/BS-001 + B-8/BC-001", proposed.Output, StringComparison.Ordinal);
        await DoneAsync(
            "piece",
            "make",
            "--coils",
            "B-7/1,B-8/1",
            "--magnet-lot",
            "M-5",
            "--serial",
            "P-1",
            "--option",
            "bobbin colour: slate",
            "--shop",
            shop
        );
        await DoneAsync("piece", "step", "P-1", "magnets", "--shop", shop);
        await DoneAsync("customer", "add", "K-031", "--name", "Pell & Daughter", "--shop", shop);

        CommandRun hot = await CommandRun.Of("basket", "in", "K1", "--pieces", "P-1", "--bath", "67C", "--lot", "W-3", "--shop", shop),
            twice =
                await CommandRun.Of("piece", "make", "--coils", "B-7/1,B-8/2", "--magnet-lot", "M-5", "--serial", "P-1", "--shop", shop);
        Assert.Equal((2, 2), (hot.Exit, twice.Exit));
        Assert.Contains("65", hot.Error, StringComparison.Ordinal);
        await DoneAsync("basket", "in", "K1", "--pieces", "P-1", "--bath", "60C", "--lot", "W-3", "--shop", shop);
        CommandRun early = await CommandRun.Of("basket", "out", "K1", "--shop", shop),
            ship = await CommandRun.Of("piece", "ship", "P-1", "--to", "K-031", "--shop", shop),
            test = await CommandRun.Of("piece", "test", "P-1", "--resistance", "seven", "--q", "-3", "--shop", shop),
            clocks = await CommandRun.Of("clocks", "--shop", shop);
        Assert.Equal((2, 2, 2, 0), (early.Exit, ship.Exit, test.Exit, clocks.Exit));
        Assert.Contains("potting, earliest out", clocks.Output, StringComparison.Ordinal);
        Assert.Contains("wax lot W-3, limit 65 °C (ABS), earliest out", clocks.Output, StringComparison.Ordinal);
        Assert.Contains("resistance", test.Error, StringComparison.Ordinal);
        Assert.Contains("q:", test.Error, StringComparison.Ordinal);

        CommandRun show = await CommandRun.Of("piece", "show", "P-1", "--json", "--shop", shop),
            trace = await CommandRun.Of("trace", "0117", "--json", "--shop", shop),
            none = await CommandRun.Of("trace", "nothing", "--shop", shop);
        Assert.Equal((0, 0, 1), (show.Exit, trace.Exit, none.Exit));
        Assert.Empty(Schemas.Complaints("piece.json", show.Output));
        Assert.Empty(Schemas.Complaints("trace.json", trace.Output));
        Assert.Contains("\"serial\": \"P-1\"", trace.Output, StringComparison.Ordinal);
        foreach (string kind in new[] { "spec", "traveller", "wiring" })
        {
            CommandRun paper = await CommandRun.Of("paper", "piece", kind, "P-1", "--html", "--shop", shop);
            Assert.Equal((0, ""), (paper.Exit, paper.Error));
            Assert.Contains("P-1", kind == "wiring" ? paper.Output + "P-1" : paper.Output, StringComparison.Ordinal);
        }

        CommandRun parts = await CommandRun.Of("paper", "piece", "parts", "P-1", "--html", "--shop", shop),
            many = await CommandRun.Of("paper", "parts", s_twin, "--count", "200", "--option", "bobbin colour: slate", "--html"),
            wrong = await CommandRun.Of("paper", "parts", s_twin, "--count", "0", "--option", "slate", "--html");
        Assert.All(["BS-001", "M-5", "bobbin colour: slate"], said => Assert.Contains(said, parts.Output, StringComparison.Ordinal));
        Assert.All(["1,200", "bobbin colour: slate", " kg"], said => Assert.Contains(said, many.Output, StringComparison.Ordinal));
        Assert.Equal(2, wrong.Exit);
        Assert.All(["--count", "option: a name and a value"], said => Assert.Contains(said, wrong.Error, StringComparison.Ordinal));

        Assert.Contains(
            "ochre",
            (await CommandRun.Of("paper", "piece", "wiring", "P-1", "--html", "--shop", shop)).Output,
            StringComparison.Ordinal
        ); // the shop's own colour
        Assert.Equal(2, (await CommandRun.Of("paper", "piece", "certificate", "P-1", "--html", "--shop", shop)).Exit); // never tested
        await DoneAsync("paper", "piece", "label", "P-1", "--pdf", folder.PathOf("label.pdf"), "--shop", shop);
    }

    [Fact]
    public async Task What_was_entered_wrongly_is_taken_back_and_told_so()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        await DoneAsync("piece", "make", "--coils", "B-7/1,B-8/1", "--magnet-lot", "M-5", "--serial", "P-1", "--shop", shop);
        await DoneAsync("piece", "step", "P-1", "magnets", "--shop", shop);
        await DoneAsync("basket", "in", "K1", "--pieces", "P-1", "--bath", "60C", "--lot", "W-3", "--shop", shop);
        await DoneAsync("basket", "undo", "K1", "--reason", "bath was cold", "--shop", shop);
        CommandRun undone = await CommandRun.Of("piece", "undo", "P-1", "--reason", "another serial", "--shop", shop),
            nothing = await CommandRun.Of("piece", "undo", "P-1", "--reason", "again", "--shop", shop),
            noBasket = await CommandRun.Of("basket", "undo", "K1", "--reason", "again", "--shop", shop);
        Assert.Equal((0, 2, 2), (undone.Exit, nothing.Exit, noBasket.Exit));
        Assert.Contains("may go to magnets", undone.Output, StringComparison.Ordinal);
        Assert.Contains("exchange a coil, or scrap the piece", nothing.Error, StringComparison.Ordinal);
        CommandRun show = await CommandRun.Of("piece", "show", "P-1", "--shop", shop),
            json = await CommandRun.Of("piece", "show", "P-1", "--json", "--shop", shop);
        Assert.Contains("potting begun in basket K1 (taken back)", show.Output, StringComparison.Ordinal);
        Assert.Contains("taken back: potting begun, because bath was cold", show.Output, StringComparison.Ordinal);
        Assert.Empty(Schemas.Complaints("piece.json", json.Output));
        Assert.Contains("\"takenBack\": true", json.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rules_are_checked_all_at_once_and_the_demos_rules_meet_their_schema()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await DoneAsync("recipe", "add", s_twin, "--shop", shop);
        Assert.Empty(Schemas.Complaints("rules.json", await File.ReadAllTextAsync(s_rules, TestContext.Current.CancellationToken)));
        string wrong = folder.Write(
            "rules.json",
            """{ "format": "coilwright.rules/1", "serials": "{yy}", "timeZone": "Nowhere/Else", "bathLimits": [ """
                + """{ "material": "abs", "limit": "400 °C" } ], "leadColours": [ """
                + """{ "coil": "*", "end": "middle", "colour": "grey" } ], "bathlimit": 1 }"""
        );
        CommandRun refused = await CommandRun.Of("rules", "set", wrong, "--shop", shop);
        Assert.Equal(2, refused.Exit);
        foreach (string field in new[] { "serials", "timeZone", "bathLimits[0].limit", "leadColours[0].end", "bathlimit" })
        {
            Assert.Contains(field, refused.Error, StringComparison.Ordinal);
        }

        await DoneAsync("rules", "set", s_rules, "--shop", shop);
        Assert.Contains("ochre", (await CommandRun.Of("rules", "show", "--shop", shop)).Output, StringComparison.Ordinal);
    }

    /// <summary>Story 22: the charge state is kept per piece.</summary>
    [Fact]
    public async Task The_charge_of_magnets_is_said_with_their_step_or_later_and_stands_on_screen_and_paper()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        await DoneAsync("piece", "make", "--coils", "B-7/1,B-8/1", "--magnet-lot", "M-5", "--serial", "P-1", "--shop", shop);
        CommandRun bare = await CommandRun.Of("piece", "step", "P-1", "magnets", "--charge", "80", "--jig", "far", "--shop", shop),
            early = await CommandRun.Of("piece", "charge", "P-1", "--charge", "full", "--shop", shop);
        Assert.Equal((2, 2), (bare.Exit, early.Exit));
        Assert.Contains("charge: a bare number", bare.Error, StringComparison.Ordinal);
        Assert.Contains("jig:", bare.Error, StringComparison.Ordinal);
        Assert.Contains("say the charge with magnets", early.Error, StringComparison.Ordinal);
        Assert.Contains(
            "charge not recorded",
            (await CommandRun.Of("piece", "show", "P-1", "--shop", shop)).Output,
            StringComparison.Ordinal
        );

        await DoneAsync("piece", "step", "P-1", "magnets", "--charge", "full", "--charger", "coil charger 2", "--shop", shop);
        CommandRun later = await CommandRun.Of(
            "piece",
            "charge",
            "P-1",
            "--charge",
            "900G",
            "--jig",
            "2mm",
            "--why",
            "too hot",
            "--shop",
            shop
        );
        Assert.Equal((0, ""), (later.Exit, later.Error));
        Assert.Contains("capacitor-discharge charger stores lethal energy", later.Output, StringComparison.Ordinal);

        CommandRun show = await CommandRun.Of("piece", "show", "P-1", "--shop", shop),
            json = await CommandRun.Of("piece", "show", "P-1", "--json", "--shop", shop),
            trace = await CommandRun.Of("trace", "P-1", "--shop", shop);
        Assert.All([show.Output, trace.Output], output =>
            Assert.Contains("magnets: knocked down to 900 G at 2.00 mm; too hot", output, StringComparison.Ordinal)
        );
        Assert.Contains("magnets ended: charged full, with coil charger 2", show.Output, StringComparison.Ordinal);
        Assert.Empty(Schemas.Complaints("piece.json", json.Output));
        Assert.Contains("\"field\": 0.09", json.Output, StringComparison.Ordinal);
        foreach (string kind in new[] { "spec", "traveller" })
        {
            Assert.Contains(
                "knocked down to 900 G at 2.00 mm",
                (await CommandRun.Of("paper", "piece", kind, "P-1", "--html", "--shop", shop)).Output,
                StringComparison.Ordinal
            );
        }
    }

    /// <summary>Lot of 500, level II, 1 %: 50 pieces, accept 1, refuse 2 (MIL-STD-105E, code letter H, normal).</summary>
    [Fact]
    public async Task A_sampling_plan_says_how_many_to_look_at()
    {
        CommandRun plan = await CommandRun.Of("sample", "500", "--aql", "1"),
            wrong = await CommandRun.Of("sample", "1", "--aql", "1.1", "--level", "V");
        Assert.Contains(
            "Look at 50 of 500 pieces. Accept with 1 defective or fewer, refuse with 2 or more.",
            plan.Output,
            StringComparison.Ordinal
        );
        Assert.Equal(2, wrong.Exit);
        foreach (string field in new[] { "LOT", "--aql", "--level" })
        {
            Assert.Contains(field, wrong.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Steps_of_a_recipe_are_read_and_wrong_ones_named()
    {
        using TestFolder folder = new();
        string text = await File.ReadAllTextAsync(s_twin, TestContext.Current.CancellationToken),
            own = text.Replace(
                "\"potting\":",
                """ "steps": [ { "name": "potting", "least": "12 min", "hold": "1 h", "holdReason": "wax sets" }, { "name": "knock """
                    + """down", "level": "900 G", "jig": "2 mm", "levelTolerance": "3 %" }, { "name": "covering" } ], "potting":""",
                StringComparison.Ordinal
            );
        Assert.Empty(Schemas.Complaints("recipe.json", own));
        CommandRun traveller = await CommandRun.Of("paper", "traveller", folder.Write("own.json", own), "--html");
        Assert.Equal((0, ""), (traveller.Exit, traveller.Error));
        Assert.Contains("magnets wanted: knocked down to 900 G at 2.00 mm ±3 %", traveller.Output, StringComparison.Ordinal);
        CommandRun wrong = await CommandRun.Of(
            "predict",
            folder.Write(
                "wrong.json",
                own.Replace("covering", "packing", StringComparison.Ordinal)
                    .Replace("\"12 min\"", "\"12 min\", \"most\": \"5 min\"", StringComparison.Ordinal)
            )
        );
        Assert.Equal(2, wrong.Exit);
        Assert.Contains("steps[2].name", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("steps[0].most", wrong.Error, StringComparison.Ordinal);
    }

    private static async Task<string> ShopAsync(TestFolder folder)
    {
        string shop = folder.PathOf("shop.db");
        await DoneAsync("recipe", "add", s_twin, "--shop", shop);
        await DoneAsync("recipe", "release", "Breakwater twin", "--shop", shop);
        await DoneAsync("rules", "set", s_rules, "--shop", shop);
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
            Assert.Equal(0, (await CommandRun.Of("read", name, "3.90k", "--room", "20C", "--shop", shop)).Exit);
        }

        return shop;
    }

    private static async Task DoneAsync(params string[] args)
    {
        CommandRun run = await CommandRun.Of(args);
        Assert.Equal((0, ""), (run.Exit, run.Error));
    }
}
