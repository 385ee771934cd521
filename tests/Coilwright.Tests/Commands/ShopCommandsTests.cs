using System.Text.RegularExpressions;

namespace Coilwright.Tests.Commands;

public sealed class ShopCommandsTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    [Fact]
    public async Task Story_1_a_change_of_a_released_recipe_is_the_next_revision_and_needs_a_reason()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        string changed = folder.Write(
            "changed.json",
            (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken)).Replace(
                "\"turns\": 8000",
                "\"turns\": 8050",
                StringComparison.Ordinal
            )
        );

        CommandRun released = await CommandRun.Of("recipe", "release", "harbour bridge", "--shop", shop);
        CommandRun begun = await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "3", "--shop", shop);
        CommandRun silent = await CommandRun.Of("recipe", "save", changed, "--shop", shop),
            told = await CommandRun.Of("recipe", "save", changed, "--reason", "new spool reads low", "--shop", shop);
        CommandRun batch = await CommandRun.Of("batch", "list", "--shop", shop);

        Assert.Equal((0, 0, 2, 0), (released.Exit, begun.Exit, silent.Exit, told.Exit));
        Assert.Contains("reason", silent.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("revision B", told.Output, StringComparison.Ordinal);
        Assert.Contains("Harbour bridge A", batch.Output, StringComparison.Ordinal); // a batch begun on A stays on A
    }

    /// <summary>It is said and not refused: the target may be the customer's.</summary>
    [Theory]
    [InlineData("2.4 H", true)] // 2.256 to 2.544 H: a good coil shows 2.55 H
    [InlineData("2.5 H", false)]
    public async Task A_target_that_leaves_out_the_forecast_is_told_at_release_and_at_the_start(string inductance, bool warns)
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db"),
            file = folder.Write(
                "recipe.json",
                (await File.ReadAllTextAsync(s_harbour, TestContext.Current.CancellationToken)).Replace(
                    "\"2.5 H\"",
                    $"\"{inductance}\"",
                    StringComparison.Ordinal
                )
            );
        await CommandRun.Of("recipe", "add", file, "--shop", shop);
        CommandRun released = await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop),
            begun = await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "3", "--shop", shop);
        Assert.Equal((0, 0), (released.Exit, begun.Exit));
        Assert.All([released, begun], run =>
            Assert.Equal(
                warns,
                run.Error.Contains(
                    "Before winding starts: targets.inductance: the target for inductance, 2.26 H to 2.54 H, leaves out "
                        + "what this recipe forecasts",
                    StringComparison.Ordinal
                )
            )
        );
        Assert.True(warns || (released.Error + begun.Error).Length == 0);
    }

    [Fact]
    public async Task A_coil_is_read_judged_and_the_next_tag_proposed()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "3", "--shop", shop);

        CommandRun good = await CommandRun.Of("read", "H-1", "6k25", "--room", "23 °C", "--shop", shop),
            open = await CommandRun.Of("read", "H-1", "open", "--shop", shop);
        CommandRun list = await CommandRun.Of("batch", "show", "H-1", "--json", "--shop", shop);

        Assert.Equal((0, ""), (good.Exit, good.Error));
        Assert.Contains("C-001: pass", good.Output, StringComparison.Ordinal);
        Assert.Contains("Next: C-002", good.Output, StringComparison.Ordinal);
        Assert.Equal(1, open.Exit);
        Assert.Contains("C-002: REJECT", open.Output, StringComparison.Ordinal);
        Assert.Empty(Schemas.Complaints("judgement.json", list.Output));
    }

    [Fact]
    public async Task What_a_coil_really_had_is_recorded_by_its_label_and_a_cause_that_is_none_is_refused()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "3", "--shop", shop);
        await CommandRun.Of("read", "H-1", "6k40", "--room", "20 °C", "--shop", shop);

        CommandRun was = await CommandRun.Of("read", "H-1", "--tag", "C-001", "--was", "bad joint", "--shop", shop),
            none = await CommandRun.Of("read", "H-1", "--tag", "C-001", "--was", "gremlins", "--shop", shop),
            both = await CommandRun.Of("read", "H-1", "6k20", "--tag", "C-001", "--was", "bad joint", "--shop", shop),
            nothing = await CommandRun.Of("read", "H-1", "--shop", shop);
        Assert.Equal((0, 2, 2, 2), (was.Exit, none.Exit, both.Exit, nothing.Exit));
        Assert.Contains("C-001: really bad joint.", was.Output, StringComparison.Ordinal);
        Assert.Contains("shorted turns", none.Error, StringComparison.Ordinal);
        Assert.Contains("7.43k", nothing.Error, StringComparison.Ordinal);
        Assert.Contains("--was", (await CommandRun.Of("read", "--help")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Undo_reading_takes_a_correction_back_and_then_the_coil()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "3", "--shop", shop);
        await CommandRun.Of("read", "H-1", "6k18", "--room", "20 °C", "--shop", shop);
        await CommandRun.Of("read", "H-1", "6k21", "--tag", "C-001", "--correct", "--reason", "slip", "--shop", shop);

        CommandRun first = await CommandRun.Of("batch", "undo-reading", "H-1", "--shop", shop),
            second = await CommandRun.Of("batch", "undo-reading", "H-1", "--shop", shop),
            third = await CommandRun.Of("batch", "undo-reading", "H-1", "--shop", shop);
        Assert.Equal((0, 0, 2), (first.Exit, second.Exit, third.Exit));
        Assert.Contains("Undone: the correction of C-001; C-001 reads 6k18.", first.Output, StringComparison.Ordinal);
        Assert.Contains("Undone: C-001; its tag is free again. Batch H-1: 0 of 3", second.Output, StringComparison.Ordinal);
        Assert.Contains("there is nothing to undo", third.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_batch_ends_at_its_number_and_more_is_said_with_a_reason()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "1", "--shop", shop);
        CommandRun twin = await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "h-1", "--quantity", "1", "--shop", shop),
            spool =
                await CommandRun.Of(
                    "batch",
                    "start",
                    "Harbour bridge",
                    "--name",
                    "H-2",
                    "--quantity",
                    "1",
                    "--spool",
                    "9999",
                    "--machine",
                    "Winder 77",
                    "--shop",
                    shop
                );
        CommandRun slip = await CommandRun.Of("read", "H-1", "abc", "--shop", shop),
            first = await CommandRun.Of("read", "H-1", "6k25", "--room", "23 °C", "--shop", shop);
        CommandRun full = await CommandRun.Of("read", "H-1", "6k25", "--shop", shop),
            beyond = await CommandRun.Of("read", "H-1", "6k25", "--tag", "C-002", "--shop", shop),
            silent = await CommandRun.Of("batch", "more", "H-1", "1", "--shop", shop);
        CommandRun more = await CommandRun.Of("batch", "more", "H-1", "1", "--reason", "one is for the shelf", "--shop", shop),
            second = await CommandRun.Of("read", "H-1", "6k25", "--shop", shop),
            list = await CommandRun.Of("batch", "list", "--shop", shop);

        Assert.Equal(
            (2, 2, 2, 0, 2, 2, 2, 0, 0),
            (twin.Exit, spool.Exit, slip.Exit, first.Exit, full.Exit, beyond.Exit, silent.Exit, more.Exit, second.Exit)
        );
        Assert.All(["spool", "machine", "Winder 77", "9999"], word => Assert.Contains(word, spool.Error, StringComparison.Ordinal));
        Assert.All([full, beyond], run =>
            Assert.Contains("coilwright batch more H-1 COUNT --reason TEXT", run.Error, StringComparison.Ordinal)
        );
        Assert.Contains("--reason", silent.Error, StringComparison.Ordinal);
        Assert.Contains("1 of 2", more.Output, StringComparison.Ordinal);
        Assert.Contains("C-001", first.Output, StringComparison.Ordinal); // the slip made no coil
        Assert.Contains("2 of 2 done", list.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Trace_finds_parts_of_names_and_gives_near_ones()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        await CommandRun.Of("customer", "add", "K-031", "--name", "Pell & Daughter", "--shop", shop);
        CommandRun part = await CommandRun.Of("trace", "pell", "--shop", shop),
            json = await CommandRun.Of("trace", "harbour", "--json", "--shop", shop),
            near = await CommandRun.Of("trace", "Harbuor bridge", "--shop", shop);
        CommandRun asked = await CommandRun.Of("customer", "erase", "K-031", "--shop", shop),
            there = await CommandRun.Of("trace", "Pell & Daughter", "--shop", shop),
            erased = await CommandRun.Of("customer", "erase", "K-031", "--yes", "--shop", shop),
            again = await CommandRun.Of("customer", "erase", "K-031", "--yes", "--shop", shop);

        Assert.Equal((0, 0, 1, 2, 0, 0, 0), (part.Exit, json.Exit, near.Exit, asked.Exit, there.Exit, erased.Exit, again.Exit));
        Assert.Contains("part of these names", part.Output, StringComparison.Ordinal);
        Assert.Contains("K-031", part.Output, StringComparison.Ordinal);
        Assert.Empty(Schemas.Complaints("trace.json", json.Output));
        Assert.Contains("\"match\": \"part\"", json.Output, StringComparison.Ordinal);
        Assert.Contains("Near it: Harbour bridge", near.Output, StringComparison.Ordinal);
        Assert.Contains("every trace leads to it", asked.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_coil_read_wrongly_is_corrected_with_a_reason()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "9", "--shop", shop);
        await CommandRun.Of("read", "H-1", "6k52", "--temperature", "23", "--turns", "8000", "--shop", shop);
        await CommandRun.Of("read", "H-1", "6k20", "--temperature", "23", "--shop", shop);

        CommandRun silent = await CommandRun.Of("read", "H-1", "6k25", "--tag", "C-001", "--correct", "--shop", shop);
        CommandRun told = await CommandRun.Of(
            "read",
            "H-1",
            "6k25",
            "--tag",
            "C-001",
            "--correct",
            "--reason",
            "figures swapped",
            "--temperature",
            "22",
            "--shop",
            shop
        );
        CommandRun taken = await CommandRun.Of(
            "read",
            "H-1",
            "6k25",
            "--tag",
            "C-001",
            "--new-tag",
            "C-002",
            "--correct",
            "--reason",
            "wrong tag",
            "--shop",
            shop
        );
        CommandRun moved = await CommandRun.Of(
            "read",
            "H-1",
            "6k25",
            "--tag",
            "C-001",
            "--new-tag",
            "C-007",
            "--correct",
            "--reason",
            "wrong tag",
            "--shop",
            shop
        );
        CommandRun none = await CommandRun.Of("read", "H-1", "6k25", "--tag", "C-001", "--correct", "--reason", "gone", "--shop", shop);

        Assert.Equal((2, 0, 2, 0, 2), (silent.Exit, told.Exit, taken.Exit, moved.Exit, none.Exit));
        Assert.Contains("a correction needs a reason", silent.Error, StringComparison.Ordinal);
        Assert.Contains("C-001: pass. 6.25 kΩ at 22.0 °C", told.Output, StringComparison.Ordinal);
        Assert.Contains("C-002 is there already", taken.Error, StringComparison.Ordinal);
        Assert.Contains("C-007: pass", moved.Output, StringComparison.Ordinal);
        Assert.Contains("C-001 has no reading to correct", none.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_that_are_not_there_are_answered_with_those_that_are()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await ShopWith(shop);

        CommandRun run = await CommandRun.Of("recipe", "show", "Harbor bridge", "--shop", shop);

        Assert.Equal(2, run.Exit);
        Assert.Contains("allowed: Harbour bridge", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_shop_is_refused_and_left_as_it_is()
    {
        using TestFolder folder = new();
        string path = folder.Write("notes.txt", "these are my notes, not a shop");

        CommandRun run = await CommandRun.Of("recipe", "list", "--shop", path);

        Assert.Equal(2, run.Exit);
        Assert.Equal("these are my notes, not a shop", await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_demo_makes_its_shop_and_rejects_at_least_one_coil_with_its_reason()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("demo.db");

        CommandRun run = await CommandRun.Of("demo", "--no-serve", "--shop", shop),
            again = await CommandRun.Of("demo", "--no-serve", "--shop", shop);

        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.True(Regex.Count(run.Output, "REJECT") >= 2);
        Assert.Matches("is rejected: .*open", run.Output);
        Assert.Contains("DC resistance at 20 °C", run.Output, StringComparison.Ordinal);
        Assert.Contains("counter stop", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"H-0\d\d .* pass ", run.Output);
        Assert.Equal(2, again.Exit); // never writes into a file that is there
    }

    private static async Task ShopWith(string shop)
    {
        CommandRun run = await CommandRun.Of("recipe", "add", s_harbour, "--shop", shop);
        Assert.Equal((0, ""), (run.Exit, run.Error));
    }
}
