using Coilwright.Storage;
using Coilwright.Storage.Sqlite;
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
        await using (SqliteShop shop = await ShopFile.CreateAsync(file, "Lantern Quay workshop", clock, Cancel))
        {
            await shop.AddRoomTemperatureAsync(new RoomTemperature(21, "21", "Mara", clock.Now), Cancel);
        }

        clock.Now += TimeSpan.FromDays(400);
        (int asked, string error) = await AddAsync(file, clock);
        Assert.Equal(ExitCode.WrongInput, asked);
        Assert.Contains("is the clock right?", error, StringComparison.Ordinal);
        Assert.Contains("--clock-is-right", error, StringComparison.Ordinal);
        await using (SqliteShop shop = await ShopFile.OpenAsync(file, Cancel))
        {
            Assert.Empty(await shop.CustomersAsync(Cancel));
        }

        Assert.Equal((ExitCode.Done, ""), await AddAsync(file, clock, "--clock-is-right"));
    }

    private static async Task<(int Exit, string Error)> AddAsync(string file, TimeProvider clock, params string[] more)
    {
        using StringWriter output = new(), error = new();
        int exit = await Cli.RunAsync(["customer", "add", "K-1", "--name", "Pell", "--shop", file, .. more], output, error, clock, Cancel);
        return (exit, error.ToString());
    }

    private sealed class StandingClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
