using System.CommandLine;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop;

namespace Coilwright.Tests.Commands;

/// <summary>A command asks about a clock that jumped before it stores anything.</summary>
public sealed class ClockQuestionTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_clock_that_jumped_is_asked_about_and_kept_once_it_is_said_to_be_right()
    {
        using TestFolder folder = new();
        string file = folder.PathOf("shop.db");
        StandingClock clock = new();
        await using (ShopRecords shop = await ShopFile.CreateAsync(file, "Lantern Quay workshop", clock, Cancel))
        {
            await shop.Room.AddAsync(new RoomTemperature(21, "21", "Mara", clock.Now), Cancel);
        }

        clock.Now += TimeSpan.FromDays(400);
        (int asked, string error) = await AddAsync(file, clock);
        Assert.Equal(ExitCode.WrongInput, asked);
        Assert.Contains("is the clock right?", error, StringComparison.Ordinal);
        Assert.Contains("--clock-is-right", error, StringComparison.Ordinal);
        await using (ShopRecords shop = await ShopFile.OpenAsync(file, Cancel))
        {
            Assert.Empty(await shop.Customers.AllAsync(Cancel));
        }

        Assert.Equal((ExitCode.Done, ""), await AddAsync(file, clock, "--clock-is-right"));
    }

    [Theory]
    [InlineData("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "4")]
    [InlineData("batch", "note", "H-1", "begin")]
    [InlineData("batch", "more", "H-1", "4", "--reason", "two broke")]
    [InlineData("recipe", "release", "Harbour bridge")]
    [InlineData("machine", "test", "Winder 2", "--turns", "100.6", "--counted", "100")]
    [InlineData("stock", "add", "0117", "--gauge", "AWG 42")]
    [InlineData("stock", "weigh", "0117", "--gross", "412g")]
    [InlineData("piece", "test", "P-1", "--resistance", "7.4k")]
    [InlineData("read", "H-1", "7.4k")]
    public async Task Every_command_that_stores_asks_before_anything_else(params string[] args)
    {
        using TestFolder folder = new();
        string file = folder.PathOf("shop.db");
        StandingClock clock = new();
        await using (ShopRecords shop = await ShopFile.CreateAsync(file, "Lantern Quay workshop", clock, Cancel))
        {
            await shop.Room.AddAsync(new RoomTemperature(21, "21", "Mara", clock.Now), Cancel);
        }

        clock.Now += TimeSpan.FromDays(400);
        (int exit, string error) = await RunAsync(clock, [.. args, "--shop", file]);
        Assert.Equal(ExitCode.WrongInput, exit);
        Assert.Contains("is the clock right?", error, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "is the clock right?",
            (await RunAsync(clock, [.. args, "--shop", file, "--clock-is-right"])).Error,
            StringComparison.Ordinal
        );
    }

    /// <summary>A command that says who did it stores it with a time.</summary>
    [Fact]
    public void Every_command_that_takes_a_person_takes_the_answer_about_the_clock()
    {
        using CommandContext desk = new(TextWriter.Null, TextWriter.Null, TimeProvider.System);
        Command[] storing = [.. All(Cli.BuildRoot(desk)).Where(command => command.Options.Any(option => option.Name == "--person"))];
        Assert.InRange(storing.Length, 30, 100);
        Assert.Empty(
            storing.Where(command => command.Options.All(option => option.Name != "--clock-is-right")).Select(command => command.Name)
        );
    }

    /// <summary>What only shows stores nothing, so it asks nothing.</summary>
    [Theory]
    [InlineData("rules", "show")]
    [InlineData("set", "list")]
    [InlineData("batch", "list")]
    public async Task What_only_shows_asks_nothing(params string[] args)
    {
        using TestFolder folder = new();
        string file = folder.PathOf("shop.db");
        StandingClock clock = new();
        await using (ShopRecords shop = await ShopFile.CreateAsync(file, "Lantern Quay workshop", clock, Cancel))
        {
            await shop.Room.AddAsync(new RoomTemperature(21, "21", "Mara", clock.Now), Cancel);
        }

        clock.Now += TimeSpan.FromDays(400);
        Assert.Equal((ExitCode.Done, ""), await RunAsync(clock, [.. args, "--shop", file]));
    }

    private static IEnumerable<Command> All(Command command) => command.Subcommands.SelectMany(All).Prepend(command);

    private static Task<(int Exit, string Error)> AddAsync(string file, TimeProvider clock, params string[] more) =>
        RunAsync(clock, ["customer", "add", "K-1", "--name", "Pell", "--shop", file, .. more]);

    private static async Task<(int Exit, string Error)> RunAsync(TimeProvider clock, string[] args)
    {
        using StringWriter output = new(),
            error = new();
        int exit = await Cli.RunAsync(args, output, error, clock, cancel: Cancel);
        return (exit, error.ToString());
    }

    private sealed class StandingClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
