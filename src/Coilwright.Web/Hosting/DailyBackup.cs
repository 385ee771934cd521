using Coilwright.Application.Backups;
using Microsoft.Extensions.Hosting;

namespace Coilwright.Web.Hosting;

/// <summary>
/// Makes the day's backup in the background while the shop is served: at start when the newest is a day old, and from then on every day.
/// One that failed is tried again in an hour.
/// </summary>
public sealed class DailyBackup(BackUpShop backUp, TimeProvider time) : BackgroundService
{
    /// <summary>How often it is looked whether one is due.</summary>
    public static readonly TimeSpan Look = TimeSpan.FromHours(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await using IAsyncDisposable? held = await backUp.HoldAsync(stoppingToken);
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.Run(() => backUp.TakeDueAsync(stoppingToken), stoppingToken); // compressing takes a thread of its own
            await Task.Delay(Look, time, stoppingToken);
        }
    }
}
