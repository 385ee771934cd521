using System.Diagnostics;
using System.Globalization;
using Coilwright.Storage;
using Coilwright.Workshop.Backups;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright backup, restore and verify, as a person calls them.</summary>
public sealed class BackupCommandTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_shop_goes_into_a_backup_and_comes_back_beside_itself()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);

        CommandRun backup = await RunAsync(1, "backup", "--shop", shop);
        string file = folder.PathOf(Path.Combine("backups", "shop-2026-03-02T120000Z.coilwright.zip"));
        string target = folder.PathOf("again.db");
        CommandRun restore = await RunAsync(2, "restore", file, "--to", target);

        Assert.Equal((0, ""), (backup.Exit, backup.Error));
        Assert.Contains($"Backup written and read back: {file}", backup.Output, StringComparison.Ordinal);
        Assert.Contains("Lantern Quay workshop: 2 rows in 2 tables", backup.Output, StringComparison.Ordinal);
        Assert.Equal((0, ""), (restore.Exit, restore.Error));
        Assert.Contains($"The shop is in {target}", restore.Output, StringComparison.Ordinal);
        Assert.Contains("1 customers", (await RunAsync(2, "verify", "--shop", target)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_oldest_are_removed_by_name_and_nothing_else()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        string stick = folder.PathOf("stick");
        for (int day = 1; day <= 3; day++)
        {
            await RunAsync(day, "backup", "--to", stick, "--shop", shop);
        }

        string own = Path.Combine(stick, "before the fair.coilwright.zip");
        File.Move(Directory.GetFiles(stick).Order(StringComparer.Ordinal).First(), own); // a person's own name keeps it
        await File.WriteAllTextAsync(Path.Combine(stick, "shop-list.txt"), "solder", Cancel);

        CommandRun run = await RunAsync(4, "backup", "--to", stick, "--keep", "2", "--shop", shop);

        Assert.Equal(0, run.Exit);
        Assert.Contains("Removed an older one: " + Path.Combine(stick, "shop-2026-03-03T120000Z"), run.Output, StringComparison.Ordinal);
        Assert.Single(run.Output.Split('\n'), line => line.StartsWith("Removed", StringComparison.Ordinal));
        Assert.Equal(
            [
                "before the fair.coilwright.zip",
                "shop-2026-03-04T120000Z.coilwright.zip",
                "shop-2026-03-05T120000Z.coilwright.zip",
                "shop-list.txt",
            ],
            Directory.GetFiles(stick).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task A_clock_that_was_set_back_does_not_remove_the_backup_just_written()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        await RunAsync(9, "backup", "--shop", shop);

        CommandRun run = await RunAsync(2, "backup", "--keep", "1", "--shop", shop);

        Assert.Contains("Removed an older one", run.Output, StringComparison.Ordinal);
        Assert.Equal(
            "shop-2026-03-03T120000Z.coilwright.zip",
            Path.GetFileName(Assert.Single(Directory.GetFiles(folder.PathOf("backups"))))
        );
    }

    [Fact]
    public async Task A_dry_run_says_what_would_happen_and_an_existing_shop_is_never_written_over()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        await RunAsync(1, "backup", "--shop", shop);
        await RunAsync(1, "customer", "add", "K-032", "--shop", shop);
        string file = Directory.GetFiles(folder.PathOf("backups")).Single();

        CommandRun dry = await RunAsync(2, "restore", file, "--to", shop, "--dry-run");
        CommandRun refused = await RunAsync(2, "restore", file, "--to", shop);
        CommandRun verified = await RunAsync(2, "verify", "--shop", shop);

        Assert.Equal((1, ""), (dry.Exit, dry.Error));
        Assert.Contains("Backup of Lantern Quay workshop, made 2026-03-02 12:00", dry.Output, StringComparison.Ordinal);
        Assert.Contains("against the backup it has customers: 1 more", dry.Output, StringComparison.Ordinal);
        Assert.Contains("This would be refused", dry.Output, StringComparison.Ordinal);
        Assert.Equal(2, refused.Exit);
        Assert.Contains("nothing is ever written over a file", refused.Error, StringComparison.Ordinal);
        Assert.Equal(0, verified.Exit);
        Assert.Contains("2 customers", verified.Output, StringComparison.Ordinal);
        Assert.Equal(["backups", "shop.db"], Names(folder));

        CommandRun done = await RunAsync(2, "restore", file, "--to", shop, "--put-aside");

        Assert.Equal((0, ""), (done.Exit, done.Error));
        Assert.Contains($"Put aside: {shop}.put-aside-2026-03-03T120000Z", done.Output, StringComparison.Ordinal);
        Assert.Contains("1 customers", (await RunAsync(2, "verify", "--shop", shop)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_backup_and_what_cannot_be_kept_is_refused_with_exit_2()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        CommandRun foreign = await RunAsync(1, "restore", shop, "--to", folder.PathOf("x.db"));
        CommandRun keep = await RunAsync(1, "backup", "--keep", "0", "--shop", shop);
        CommandRun missing = await RunAsync(1, "verify", "--shop", folder.PathOf("none.db"));

        Assert.Equal((2, 2, 2), (foreign.Exit, keep.Exit, missing.Exit));
        Assert.Contains("this is not a backup of a shop", foreign.Error, StringComparison.Ordinal);
        Assert.Contains("1 to 10,000", keep.Error, StringComparison.Ordinal);
        Assert.Contains("there is no such shop", missing.Error, StringComparison.Ordinal);
        Assert.Equal(["shop.db"], Names(folder));
    }

    [Fact]
    public async Task A_damaged_file_is_not_sound_and_exits_1()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        await using (FileStream file = new(shop, FileMode.Open))
        {
            file.Position = 8192;
            await file.WriteAsync(new byte[8192], Cancel);
        }

        CommandRun run = await RunAsync(1, "verify", "--shop", shop);

        Assert.Equal(1, run.Exit);
        Assert.Contains("NOT SOUND: damaged", run.Output, StringComparison.Ordinal);
        Assert.Contains("What to do: ", run.Output, StringComparison.Ordinal);
    }

    /// <summary>Another process has the shop open: a backup is taken all the same, and restoring over it is refused.</summary>
    [Fact]
    public async Task A_shop_that_another_process_serves_is_backed_up_and_not_replaced()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        using Process serving = Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [Path.Combine(AppContext.BaseDirectory, "coilwright.dll"), "serve", "--port", "0", "--shop", shop]
            )
            {
                RedirectStandardOutput = true,
            }
        )!;
        try
        {
            string line = await serving.StandardOutput.ReadLineAsync(Cancel) ?? "";
            using HttpClient client = new()
            {
                BaseAddress = new Uri(line.Split(' ').Single(word => word.StartsWith("http", StringComparison.Ordinal))),
            };
            using FormUrlEncodedContent form = new([new("room", "23"), new("person", "Mara")]);
            using HttpRequestMessage entry = new(HttpMethod.Post, "/room") { Content = form };
            entry.Headers.Add("Origin", client.BaseAddress.GetLeftPart(UriPartial.Authority));
            using HttpResponseMessage answer = await client.SendAsync(entry, Cancel);
            Assert.True((int)answer.StatusCode < 400, $"{answer.StatusCode}");

            string stick = folder.PathOf("stick");
            CommandRun backup = await RunAsync(1, "backup", "--to", stick, "--shop", shop);
            CommandRun refused = await RunAsync(1, "restore", Directory.GetFiles(stick).Single(), "--to", shop, "--put-aside");

            Assert.Contains("3 rows in 3 tables", backup.Output, StringComparison.Ordinal); // the entry stood in the log
            Assert.Equal(2, refused.Exit);
            Assert.Contains("open in another program", refused.Error, StringComparison.Ordinal);
        }
        finally
        {
            serving.Kill(entireProcessTree: true);
            await serving.WaitForExitAsync(CancellationToken.None);
        }
    }

    [Fact]
    public async Task Every_table_has_a_name_that_people_know()
    {
        using TestFolder folder = new();
        string shop = await ShopAsync(folder);
        CommandRun backup = await RunAsync(1, "backup", "--shop", shop);
        Assert.Equal(0, backup.Exit);
        await using Storage.Records.ShopRecords records = await ShopFile.OpenAsync(shop, Cancel);
        BackupFile file = Assert.Single(await records.Backups.InFolderAsync(folder.PathOf("backups"), Cancel));
        Assert.Empty(file.Manifest!.Shop.Rows.Keys.Except(TableLabel.Known));
    }

    private static async Task<string> ShopAsync(TestFolder folder)
    {
        string shop = folder.PathOf("shop.db");
        await (await ShopFile.CreateAsync(shop, "Lantern Quay workshop", new StandingClock(Day(1)), Cancel)).DisposeAsync();
        CommandRun added = await RunAsync(1, "customer", "add", "K-031", "--shop", shop);
        Assert.True(added.Exit == 0, added.Error);
        return shop;
    }

    private static async Task<CommandRun> RunAsync(int day, params string[] args)
    {
        using StringWriter output = new(CultureInfo.InvariantCulture),
            error = new(CultureInfo.InvariantCulture);
        int exit = await Cli.RunAsync(args, output, error, new StandingClock(Day(day)), cancel: Cancel);
        return new CommandRun(exit, output.ToString(), error.ToString());
    }

    private static DateTimeOffset Day(int day) => new(2026, 3, 1 + day, 12, 0, 0, TimeSpan.Zero);

    private static string[] Names(TestFolder folder) =>
        [.. Directory.GetFileSystemEntries(folder.PathOf("")).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    private sealed class StandingClock(DateTimeOffset now) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => now;
    }
}
