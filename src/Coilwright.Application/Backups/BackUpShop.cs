using Coilwright.Workshop;
using Coilwright.Workshop.Backups;

namespace Coilwright.Application.Backups;

/// <summary>Makes backups of the open shop, keeps as many as were asked for, and tells how it stands with them.</summary>
/// <param name="backups">The store's part of it.</param>
/// <param name="plan">Where to, and how many stay.</param>
/// <param name="time">The clock.</param>
public sealed class BackUpShop(IShopBackups backups, BackupPlan plan, TimeProvider time) : IDisposable
{
    /// <summary>How old an answer may be that Today shows: reading a folder on a stick takes a while.</summary>
    private static readonly TimeSpan s_today = TimeSpan.FromMinutes(1);

    private readonly SemaphoreSlim _one = new(1);

    private volatile Known? _known;

    /// <summary>Where backups go by themselves, and how many stay.</summary>
    public BackupPlan Plan => plan;

    /// <summary>The shop's file.</summary>
    public string ShopPath => backups.ShopPath;

    /// <summary>What to do instead, where the keeper of a server takes backups; empty where this program takes them.</summary>
    public string Instead => backups.Instead;

    /// <summary>Why the last try into the plan's folders failed; empty when it did not.</summary>
    public IReadOnlyList<string> Failures { get; private set; } = [];

    /// <summary>
    /// Keeps the shop's file seen as open while it is served, so that nobody restores over it unawares; null when it cannot be held, which
    /// stands in <see cref="Failures"/>.
    /// </summary>
    public async Task<IAsyncDisposable?> HoldAsync(CancellationToken cancel)
    {
        try
        {
            return await backups.HoldAsync(cancel).ConfigureAwait(false);
        }
        catch (BackupException failure)
        {
            Failures = [failure.Message];
            return null;
        }
    }

    /// <summary>One backup into one folder; then those beyond the newest so many are removed there.</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="keep">How many stay, 1 or more.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="BackupException">None could be written.</exception>
    public async Task<BackupOutcome> TakeAsync(string folder, int keep, CancellationToken cancel)
    {
        BackupFile written = await backups.TakeAsync(folder, ProgramVersion.Text, time.GetUtcNow(), cancel).ConfigureAwait(false);
        List<BackupFile> removed = [];
        try
        {
            IReadOnlyList<BackupFile> all = await backups.InFolderAsync(folder, cancel).ConfigureAwait(false);
            foreach (BackupFile old in BackupRules.Surplus(all, keep, written.Path))
            {
                backups.Remove(old);
                removed.Add(old);
            }

            return new BackupOutcome(written, removed, "");
        }
        catch (BackupException resisted)
        {
            return new BackupOutcome(written, removed, resisted.Message);
        }
    }

    /// <summary>A backup into each of the plan's folders, one at a time; one that fails does not keep another from being made.</summary>
    public async Task<IReadOnlyList<BackupOutcome>> TakeAllAsync(CancellationToken cancel)
    {
        await _one.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            return await TakeIntoAsync(plan.Folders, cancel).ConfigureAwait(false);
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>
    /// As <see cref="TakeAllAsync"/>, into those folders alone whose newest backup is a day old. It never throws for what it could not do:
    /// that stands in <see cref="Failures"/>.
    /// </summary>
    public async Task TakeDueAsync(CancellationToken cancel)
    {
        await _one.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            DateTimeOffset now = time.GetUtcNow();
            List<string> due = [];
            foreach (string folder in plan.Folders)
            {
                (IReadOnlyList<BackupFile> there, _) = await FindAsync(folder, cancel).ConfigureAwait(false);
                if (BackupRules.IsDue(Newest(there), now))
                {
                    due.Add(folder);
                }
            }

            await TakeIntoAsync(due, cancel).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            Failures = [$"the backup of today was not made: {failure.Message}"]; // serving goes on
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>How the shop stands with its backups.</summary>
    /// <param name="notOlder">An answer that was given so long ago still does.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<BackupStatus> StatusAsync(TimeSpan notOlder, CancellationToken cancel)
    {
        DateTimeOffset now = time.GetUtcNow();
        if (_known is { } known && (now - known.AtUtc).Duration() < notOlder)
        {
            return known.Status;
        }

        List<BackupFile> all = [];
        List<string> failures = [.. Failures];
        bool elsewhere = false;
        foreach (BackupFolder folder in Folders())
        {
            (IReadOnlyList<BackupFile> there, string complaint) = await FindAsync(folder.Path, cancel).ConfigureAwait(false);
            all.AddRange(there);
            elsewhere |= folder.IsElsewhere && Newest(there) is not null;
            failures.AddRange(complaint.Length > 0 ? [complaint] : Array.Empty<string>());
        }

        BackupStatus status = new(
            [.. all.OrderByDescending(one => one.Manifest?.TimeUtc ?? DateTimeOffset.MinValue)],
            BackupRules.Warnings(Newest(all), now, elsewhere),
            [.. failures.Distinct(StringComparer.Ordinal)]
        );
        _known = new Known(now, status);
        return status;
    }

    /// <summary>What Today says: failures and warnings, where backups are made every day; nothing while the first is being made.</summary>
    public async Task<IReadOnlyList<string>> TodayAsync(CancellationToken cancel)
    {
        if (!plan.IsDaily)
        {
            return [];
        }

        BackupStatus status = await StatusAsync(s_today, cancel).ConfigureAwait(false);
        bool isFirst = status.Backups.Count == 0 && _one.CurrentCount == 0;
        return isFirst ? [] : [.. status.Failures.Select(why => "The last backup failed: " + why), .. status.Warnings];
    }

    /// <summary>The plan's folders, and whether each lies on another volume than the shop.</summary>
    public IReadOnlyList<BackupFolder> Folders()
    {
        string volume = backups.VolumeOf(BackupPlan.FileOf(ShopPath));
        return [.. plan.Folders.Select(folder => new BackupFolder(folder, backups.VolumeOf(folder) != volume))];
    }

    public void Dispose() => _one.Dispose();

    private static DateTimeOffset? Newest(IEnumerable<BackupFile> files) => files.Max(one => one.Manifest?.TimeUtc);

    private async Task<IReadOnlyList<BackupOutcome>> TakeIntoAsync(IReadOnlyList<string> folders, CancellationToken cancel)
    {
        List<BackupOutcome> taken = [];
        List<string> failures = [];
        foreach (string folder in folders)
        {
            try
            {
                BackupOutcome outcome = await TakeAsync(folder, plan.Keep, cancel).ConfigureAwait(false);
                taken.Add(outcome);
                failures.AddRange(outcome.Complaint.Length > 0 ? [outcome.Complaint] : Array.Empty<string>());
            }
            catch (BackupException failed)
            {
                failures.Add(failed.Message);
            }
        }

        Failures = failures;
        _known = null;
        return taken;
    }

    private async Task<(IReadOnlyList<BackupFile> There, string Complaint)> FindAsync(string folder, CancellationToken cancel)
    {
        try
        {
            return (await backups.InFolderAsync(folder, cancel).ConfigureAwait(false), "");
        }
        catch (BackupException unreadable)
        {
            return ([], unreadable.Message);
        }
    }

    /// <summary>The answer given last.</summary>
    private sealed record Known(DateTimeOffset AtUtc, BackupStatus Status);
}
