using Coilwright.Workshop.Batches.Summaries;
using Microsoft.Extensions.Hosting;

namespace Coilwright.Web.Hosting;

/// <summary>
/// Makes the summaries of batches that are missing, in the background and once after start: those of a shop that another version of the
/// program kept. From then on each page makes the few that it needs.
/// </summary>
public sealed class SummaryKeeper(BatchSummaries summaries) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        (int kept, int missing) = (1, 1);
        while (kept > 0 && missing > 0)
        {
            (kept, missing) = await Task.Run(() => summaries.CatchUpAsync(BatchSummaries.AtOnce, stoppingToken), stoppingToken);
        }
    }
}
