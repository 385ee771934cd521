using Coilwright.Workshop.Backups;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Backups;

/// <summary>Backups of a shop in one SQLite file, taken while it is open here and elsewhere.</summary>
/// <param name="shopPath">The shop's file.</param>
/// <param name="connectionString">How it is opened.</param>
internal sealed class SqliteBackups(string shopPath, string connectionString) : IShopBackups
{
    public string ShopPath { get; } = Path.GetFullPath(shopPath);

    public async Task<BackupFile> TakeAsync(string folder, string program, DateTimeOffset nowUtc, CancellationToken cancel)
    {
        string at = Path.GetFullPath(folder),
            making = Path.Combine(at, $".making-{Guid.NewGuid():N}");
        try
        {
            Directory.CreateDirectory(making);
            string snapshot = Path.Combine(making, "snapshot.db"),
                archive = Path.Combine(making, "backup.zip"),
                back = Path.Combine(making, "back.db");
            await SnapshotAsync(snapshot, cancel);
            BackupManifest manifest = await DescribeAsync(snapshot, program, nowUtc, cancel);
            await BackupArchive.WriteAsync(archive, snapshot, manifest, cancel);
            File.Delete(snapshot);
            BackupArchive.Extract(archive, back);
            await ReadBackAsync(back, manifest.Shop, cancel);
            string path = BackupName.Free(at, ShopPath, nowUtc);
            File.Move(archive, path, overwrite: false);
            return new BackupFile(path, new FileInfo(path).Length, manifest, "");
        }
        catch (Exception failure) when (failure is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw new BackupException(Words(at, failure), failure);
        }
        finally
        {
            Clear(making);
        }
    }

    public async Task<IReadOnlyList<BackupFile>> InFolderAsync(string folder, CancellationToken cancel)
    {
        string at = Path.GetFullPath(folder);
        try
        {
            if (!Directory.Exists(at))
            {
                return [];
            }

            (string Name, DateTimeOffset CreatedUtc) ours = await IdentityAsync(cancel);
            return
            [
                .. Directory
                    .EnumerateFiles(at, "*" + BackupName.Ending)
                    .Where(path => BackupName.IsOf(ShopPath, path))
                    .Select(Read)
                    .Where(one => one.Manifest is not { Shop: { } shop } || (shop.Name, shop.CreatedUtc) == ours)
                    .OrderByDescending(one => one.Manifest?.TimeUtc ?? DateTimeOffset.MinValue),
            ];
        }
        catch (Exception failure) when (failure is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw new BackupException($"{at}: the folder of backups cannot be read: {failure.Message}", failure);
        }
    }

    public void Remove(BackupFile backup)
    {
        try
        {
            File.Delete(backup.Path);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new BackupException($"{backup.Path}: this old backup cannot be removed: {failure.Message}", failure);
        }
    }

    public async Task<IAsyncDisposable> HoldAsync(CancellationToken cancel)
    {
        SqliteConnection held = new(new SqliteConnectionStringBuilder(connectionString) { Pooling = false }.ToString());
        try
        {
            await held.OpenAsync(cancel);
            await using SqliteCommand look = new("SELECT count(*) FROM Shop", held); // a lock is taken by the first look, and kept
            await look.ExecuteScalarAsync(cancel);
            return held;
        }
        catch (SqliteException failure)
        {
            await held.DisposeAsync();
            throw new BackupException($"{ShopPath}: the shop's file cannot be read: {failure.Message}", failure);
        }
    }

    public string VolumeOf(string path) => Volumes.Of(path);

    /// <summary>A copy of one moment: what was confirmed before stands in it, what others write meanwhile does not.</summary>
    private async Task SnapshotAsync(string path, CancellationToken cancel)
    {
        await using SqliteConnection from = new(connectionString),
            to = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        await from.OpenAsync(cancel);
        await to.OpenAsync(cancel);
        from.BackupDatabase(to);
    }

    private static async Task<BackupManifest> DescribeAsync(
        string snapshot,
        string program,
        DateTimeOffset nowUtc,
        CancellationToken cancel
    )
    {
        await using ShopReader reader = await ShopReader.OpenAsync(snapshot, alone: true, cancel);
        return new BackupManifest(
            program,
            nowUtc,
            await reader.ContentsAsync(cancel),
            new FileInfo(snapshot).Length,
            await BackupArchive.HashAsync(snapshot, cancel)
        );
    }

    private static async Task ReadBackAsync(string path, ShopContents written, CancellationToken cancel)
    {
        ShopHeader.Check(path);
        await using ShopReader reader = await ShopReader.OpenAsync(path, alone: true, cancel);
        IReadOnlyList<string> damage = await reader.DamageAsync(cancel);
        if (damage.Count > 0)
        {
            throw new BackupException(
                $"the backup was read back and is damaged ({damage[0]}), so it was not kept. Run coilwright verify: it is likely that the "
                    + "shop's own file is damaged too."
            );
        }

        if ((await reader.ContentsAsync(cancel)).Against(written) is { Count: > 0 } other)
        {
            throw new BackupException(
                $"the backup was read back with other records than were written ({other[0].Table}); it was not kept."
            );
        }
    }

    private static BackupFile Read(string path)
    {
        long bytes = new FileInfo(path).Length;
        try
        {
            return new BackupFile(path, bytes, BackupArchive.ReadManifest(path), "");
        }
        catch (BackupException unreadable)
        {
            return new BackupFile(path, bytes, null, unreadable.Message);
        }
    }

    private static string Words(string folder, Exception failure) =>
        StorageFault.Of(failure) is { DiskIsFull: true }
            ? $"{folder}: the disk is full, no backup was written. Make room on it, or take another folder."
            : $"{folder}: no backup could be written here: {failure.Message}";

    /// <summary>Takes away what was being made; a folder that resists is no reason to hide why the backup failed.</summary>
    private static void Clear(string making)
    {
        try
        {
            Directory.Delete(making, recursive: true);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // it has a name that nobody takes for a backup
        }
    }

    /// <summary>Name and birth of the open shop, by which its backups are known.</summary>
    private async Task<(string Name, DateTimeOffset CreatedUtc)> IdentityAsync(CancellationToken cancel)
    {
        await using SqliteConnection connection = new(connectionString);
        await connection.OpenAsync(cancel);
        await using SqliteCommand command = new("SELECT Name, CreatedUtc FROM Shop", connection);
        await using SqliteDataReader row = await command.ExecuteReaderAsync(cancel);
        await row.ReadAsync(cancel);
        return (row.GetString(0), ShopReader.Moment(row.GetString(1)));
    }
}
