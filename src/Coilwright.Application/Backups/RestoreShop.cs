using Coilwright.Storage.Backups;
using Coilwright.Workshop.Backups;

namespace Coilwright.Application.Backups;

/// <summary>Puts a shop's file back from a backup.</summary>
/// <param name="time">The clock.</param>
public sealed class RestoreShop(TimeProvider time)
{
    /// <summary>What it would do; nothing is written.</summary>
    /// <exception cref="BackupException">The backup is none, is damaged, or was written by a newer program.</exception>
    public Task<RestorePlan> PlanAsync(string backup, string target, CancellationToken cancel) =>
        ShopRestore.PlanAsync(backup, target, cancel);

    /// <summary>Does it; what stands at the target is put aside first, under a dated name.</summary>
    /// <returns>Files that were put aside, by their new names.</returns>
    /// <exception cref="BackupException">It cannot be done; what stood there stands there.</exception>
    public Task<IReadOnlyList<string>> RunAsync(RestorePlan plan, CancellationToken cancel) =>
        ShopRestore.RunAsync(plan, time.GetUtcNow(), cancel);
}
