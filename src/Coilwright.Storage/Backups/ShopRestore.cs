using Coilwright.Workshop.Backups;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Backups;

/// <summary>Puts a shop's file back from a backup: whole or not at all, and never over another file.</summary>
public static class ShopRestore
{
    /// <summary>Where SQLite keeps its locks in a file, and how many bytes of them: its published file locking protocol.</summary>
    private const long SharedLocksAt = 0x40000002,
        SharedLocks = 510;

    /// <summary>Reads the backup and what stands at the target; writes nothing.</summary>
    /// <param name="backup">The backup.</param>
    /// <param name="target">The shop's file to be.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="BackupException">The backup is none, is damaged, or was written by a newer program.</exception>
    public static async Task<RestorePlan> PlanAsync(string backup, string target, CancellationToken cancel)
    {
        if (!ShopConnection.IsFile(target))
        {
            throw new BackupException(
                $"{target}: a backup is restored into a file; copy the shop from there to the server: "
                    + $"coilwright move --shop FILE --to {target}."
            );
        }

        BackupManifest manifest = await Task.Run(() => BackupArchive.Extract(backup, to: null), cancel);
        if (manifest.Shop.SchemaVersion > ShopFile.SchemaVersion)
        {
            throw new BackupException(
                FormattableString.Invariant(
                    $"{backup}: this backup was written by a newer Coilwright ({manifest.Program}, records of version "
                )
                    + FormattableString.Invariant($"{manifest.Shop.SchemaVersion}; this program knows {ShopFile.SchemaVersion}). ")
                    + "Restore it with the newer program."
            );
        }

        if (Directory.Exists(target))
        {
            throw new BackupException($"{target}: this is a folder; name the shop's file to be.");
        }

        bool taken = Path.Exists(target);
        (ShopContents? present, string complaint) = taken ? await PresentAsync(target, cancel) : (null, "");
        return new RestorePlan(backup, target, manifest, taken, present, complaint, WriteAheadLog.Beside(target));
    }

    /// <summary>Does it. What stands at the target is put aside under a dated name first, log and all.</summary>
    /// <param name="plan">What was planned.</param>
    /// <param name="nowUtc">Now; it stands in the names of what is put aside.</param>
    /// <param name="cancel">Gives up; nothing is changed then.</param>
    /// <returns>Files that were put aside, by their new names.</returns>
    /// <exception cref="BackupException">It cannot be done; what stood there stands there.</exception>
    public static async Task<IReadOnlyList<string>> RunAsync(RestorePlan plan, DateTimeOffset nowUtc, CancellationToken cancel)
    {
        string target = Path.GetFullPath(plan.Target),
            making = $"{target}.{Guid.NewGuid():N}.restoring";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            await Task.Run(() => BackupArchive.Extract(plan.Backup, making), cancel);
            ShopCheck check = await ShopVerification.CheckAsync(making, cancel);
            if (!check.IsSound || check.Contents!.Against(plan.Manifest.Shop).Count > 0)
            {
                throw new BackupException($"{plan.Backup}: what is in this backup is damaged; nothing was restored. Take another one.");
            }

            RefuseServed(target);
            return Swap(making, target, nowUtc);
        }
        catch (Exception failure) when (failure is SqliteException or IOException or UnauthorizedAccessException)
        {
            string why = StorageFault.Of(failure) is { DiskIsFull: true } ? "the disk is full" : failure.Message;
            throw new BackupException($"{plan.Target}: nothing was restored: {why}", failure);
        }
        finally
        {
            File.Delete(making);
        }
    }

    /// <summary>Every file at the target gets another name, then the new one gets its own; all of it, or all as before.</summary>
    private static List<string> Swap(string making, string target, DateTimeOffset nowUtc)
    {
        string aside = FreeAside(target, nowUtc);
        List<(string From, string To)> moved = [];
        try
        {
            foreach (string ending in (string[])["", .. WriteAheadLog.Endings])
            {
                if (File.Exists(target + ending))
                {
                    File.Move(target + ending, aside + ending, overwrite: false);
                    moved.Add((target + ending, aside + ending));
                }
            }

            File.Move(making, target, overwrite: false);
            return [.. moved.Select(one => one.To)];
        }
        catch
        {
            foreach ((string from, string to) in Enumerable.Reverse(moved))
            {
                File.Move(to, from, overwrite: false);
            }

            throw;
        }
    }

    private static string FreeAside(string target, DateTimeOffset nowUtc)
    {
        string stem = $"{target}.put-aside-{BackupName.Time(nowUtc)}",
            aside = stem;
        for (int more = 2; Path.Exists(aside) || WriteAheadLog.Beside(aside).Count > 0; more++)
        {
            aside = FormattableString.Invariant($"{stem}-{more}");
        }

        return aside;
    }

    /// <summary>Refuses while a program has the file open: it would go on writing into the one that was put aside.</summary>
    private static void RefuseServed(string target)
    {
        if (!File.Exists(target) || OperatingSystem.IsMacOS() || OperatingSystem.IsFreeBSD())
        {
            return; // those two cannot be asked without changing the file
        }

        using FileStream file = new(target, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        try
        {
            file.Lock(SharedLocksAt, SharedLocks);
            file.Unlock(SharedLocksAt, SharedLocks);
        }
        catch (IOException held)
        {
            throw new BackupException(
                $"{target}: this shop is open in another program: stop it first (coilwright serve ends with Ctrl+C).",
                held
            );
        }
    }

    private static async Task<(ShopContents? Present, string Complaint)> PresentAsync(string target, CancellationToken cancel)
    {
        try
        {
            return (await ShopVerification.ContentsAsync(target, cancel), "");
        }
        catch (ShopFileException unreadable)
        {
            return (null, unreadable.Message);
        }
    }
}
