using System.Net;
using Coilwright.Application.Backups;
using Coilwright.Application.Composition;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Web.Tests;

/// <summary>Backups of a served shop: every day by themselves, by the button, and what a person is told.</summary>
public sealed class BackupPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task One_is_made_at_start_and_one_a_day_from_then_on()
    {
        await using DailyShop shop = await DailyShop.StartAsync();
        await shop.Clock.UntilWaitingAsync();
        Assert.Equal(["shop-2026-03-02T090000Z.coilwright.zip"], shop.Names());

        for (int hour = 1; hour < 24; hour++)
        {
            await shop.Clock.PassAsync(DailyBackup.Look);
        }

        Assert.Single(shop.Names()); // 23 hours old
        await shop.Clock.PassAsync(DailyBackup.Look);
        Assert.Equal("shop-2026-03-03T090000Z.coilwright.zip", shop.Names().Last());
        Assert.Equal(2, shop.Names().Length);
    }

    [Fact]
    public async Task A_server_started_again_within_the_day_makes_none()
    {
        await using DailyShop shop = await DailyShop.StartAsync();
        await shop.Clock.UntilWaitingAsync();
        shop.Clock.Now += TimeSpan.FromHours(5);
        await shop.RestartAsync();
        await shop.Clock.UntilWaitingAsync();
        Assert.Single(shop.Names());
        shop.Clock.Now += TimeSpan.FromHours(19);
        await shop.RestartAsync();
        await shop.Clock.UntilWaitingAsync();
        Assert.Equal(2, shop.Names().Length);
    }

    [Fact]
    public async Task A_failure_is_said_on_Today_and_the_pages_go_on_and_it_is_tried_again()
    {
        await using DailyShop shop = await DailyShop.StartAsync(blocked: true);
        await shop.Clock.UntilWaitingAsync();
        Assert.DoesNotContain("backup", await shop.GetAsync("/"), StringComparison.Ordinal); // an empty new shop is not nagged
        await shop.WithRecipeAsync();

        string today = await shop.GetAsync("/");
        Assert.Contains("The last backup failed: ", today, StringComparison.Ordinal);
        Assert.Contains("There is no backup of this shop yet.", today, StringComparison.Ordinal);
        Assert.Contains("href=\"/shop/backups\"", today, StringComparison.Ordinal);
        (HttpStatusCode status, string page) = await shop.PostAsync("/shop/backups");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("The last backup failed", page, StringComparison.Ordinal);

        File.Delete(shop.Folder);
        await shop.Clock.PassAsync(DailyBackup.Look);

        Assert.Single(shop.Names());
        today = await shop.GetAsync("/");
        Assert.DoesNotContain("The last backup failed", today, StringComparison.Ordinal);
        Assert.DoesNotContain("no backup of this shop", today, StringComparison.Ordinal);
        Assert.Contains("No backup lies on another disk than the shop", today, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Today_says_when_the_newest_is_older_than_two_days()
    {
        await using DailyShop shop = await DailyShop.StartAsync();
        await shop.WithRecipeAsync();
        await shop.Clock.UntilWaitingAsync();
        shop.Clock.Now += TimeSpan.FromDays(2); // asleep: nothing looked whether one was due
        Assert.DoesNotContain("days old", await shop.GetAsync("/"), StringComparison.Ordinal);
        shop.Clock.Now += TimeSpan.FromHours(25);
        Assert.Contains("The newest backup is 3 days old.", await shop.GetAsync("/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_makes_one_lists_it_and_spells_out_how_to_restore()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string folder = Path.Combine(Path.GetDirectoryName(shop.File)!, "backups");
        string before = await shop.Client.GetStringAsync(new Uri("/shop/backups", UriKind.Relative), Cancel);
        Assert.Contains("Backups will stand here", before, StringComparison.Ordinal);
        Assert.Contains($"{folder}</code>, the usual folder: on the same disk as the shop", before, StringComparison.Ordinal);

        using FormUrlEncodedContent form = KnownHostsTests.Form();
        using HttpResponseMessage made = await shop.Client.PostAsync(new Uri("/shop/backups", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.Found, made.StatusCode);
        string page = await shop.Client.GetStringAsync(made.Headers.Location, Cancel);

        string file = Assert.Single(Directory.GetFiles(folder));
        Assert.Contains("A backup was written and read back.", page, StringComparison.Ordinal);
        Assert.Contains("sound, 1 row in 1 table", page, StringComparison.Ordinal);
        string text = WebUtility.HtmlDecode(page);
        Assert.Contains($"coilwright restore \"{file}\" --to \"{shop.File}\" --put-aside", text, StringComparison.Ordinal);
        Assert.DoesNotContain("backup", await shop.Client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_folder_gets_one_and_a_folder_that_is_not_there_keeps_no_other_from_its_own()
    {
        await using DailyShop shop = await DailyShop.StartAsync(blocked: true, more: "stick");
        await shop.Clock.UntilWaitingAsync();
        Assert.Single(Directory.GetFiles(shop.PathOf("stick")));
        await shop.WithRecipeAsync();
        string today = await shop.GetAsync("/");
        Assert.Contains("The last backup failed: ", today, StringComparison.Ordinal);
        Assert.DoesNotContain("no backup of this shop", today, StringComparison.Ordinal);
    }

    /// <summary>A shop served with a backup every day, on a clock that stands until it is moved.</summary>
    private sealed class DailyShop : IAsyncDisposable
    {
        private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-daily-").FullName;
        private readonly HttpClient _client = new();
        private string[] _more = [];
        private ShopRecords _records = null!;
        private WebApplication _app = null!;

        private DailyShop() { }

        public MovedClock Clock { get; } = new();
        public string Folder => PathOf("backups");

        public static async Task<DailyShop> StartAsync(bool blocked = false, params string[] more)
        {
            DailyShop shop = new();
            shop._more = [.. more.Select(shop.PathOf)];
            if (blocked)
            {
                await File.WriteAllTextAsync(shop.Folder, "a file where the folder should be", Cancel);
            }

            await (await ShopFile.CreateAsync(shop.PathOf("shop.db"), "Lantern Quay workshop", shop.Clock, Cancel)).DisposeAsync();
            await shop.ServeAsync();
            return shop;
        }

        public string PathOf(string name) => Path.Combine(_folder, name);

        public string[] Names() => [.. Directory.GetFiles(Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

        public async Task RestartAsync()
        {
            await StopAsync();
            await ServeAsync();
        }

        public async Task WithRecipeAsync()
        {
            string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
            ShopServices shop = _app.Services.GetRequiredService<ShopServices>();
            Assert.Empty((await shop.Recipes.SaveAsync(Guid.NewGuid(), json, "", "Joss", 0, Cancel)).Problems);
        }

        public Task<string> GetAsync(string address) => _client.GetStringAsync(new Uri(_app.Urls.Single() + address), Cancel);

        public async Task<(HttpStatusCode Status, string Page)> PostAsync(string address)
        {
            using FormUrlEncodedContent form = KnownHostsTests.Form();
            using HttpResponseMessage answer = await _client.PostAsync(new Uri(_app.Urls.Single() + address), form, Cancel);
            return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Cancel));
        }

        public async ValueTask DisposeAsync()
        {
            _client.Dispose();
            await StopAsync();
            Directory.Delete(_folder, recursive: true);
        }

        private async Task ServeAsync()
        {
            _records = await ShopFile.OpenAsync(PathOf("shop.db"), Cancel);
            BackupPlan plan = BackupPlan.Of(PathOf("shop.db"), _more.Length > 0 ? [Folder, .. _more] : [], isDaily: true);
            _app = WebHost.Build(["http://127.0.0.1:0"], _records, Clock, new() { Backups = plan });
            await _app.StartAsync(Cancel);
        }

        private async Task StopAsync()
        {
            await _app.StopAsync(CancellationToken.None);
            await _app.DisposeAsync();
            await _records.DisposeAsync();
        }
    }

    /// <summary>Time that passes only when it is told to; timers go off as it passes them.</summary>
    private sealed class MovedClock : TimeProvider
    {
        private readonly Lock _gate = new();
        private readonly List<Alarm> _alarms = [];

        public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => Now;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            Alarm alarm = new(this, callback, state, Now + dueTime);
            lock (_gate)
            {
                _alarms.Add(alarm);
            }

            return alarm;
        }

        /// <summary>Until the work in the background waits for time to pass.</summary>
        public async Task UntilWaitingAsync()
        {
            while (Waiting() == 0)
            {
                await Task.Delay(10, Cancel);
            }
        }

        public async Task PassAsync(TimeSpan time)
        {
            await UntilWaitingAsync();
            Now += time;
            Alarm[] due;
            lock (_gate)
            {
                due = [.. _alarms.Where(alarm => alarm.DueUtc <= Now)];
                _alarms.RemoveAll(due.Contains);
            }

            foreach (Alarm alarm in due)
            {
                alarm.GoOff();
            }

            await UntilWaitingAsync();
        }

        private int Waiting()
        {
            lock (_gate)
            {
                return _alarms.Count;
            }
        }

        private sealed class Alarm(MovedClock clock, TimerCallback callback, object? state, DateTimeOffset dueUtc) : ITimer
        {
            public DateTimeOffset DueUtc => dueUtc;

            public void GoOff() => callback(state);

            public bool Change(TimeSpan dueTime, TimeSpan period) => false;

            public void Dispose()
            {
                lock (clock._gate)
                {
                    clock._alarms.Remove(this);
                }
            }

            public ValueTask DisposeAsync()
            {
                Dispose();
                return ValueTask.CompletedTask;
            }
        }
    }
}
