using System.Globalization;
using Coilwright.Storage.Backups;
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage;

/// <summary>
/// One shop, one file. Makes it, opens it, and refuses what is no shop, is damaged, or is newer than this program: unread and untouched.
/// </summary>
public static class ShopFile
{
    /// <summary>Marks a file as a shop's in SQLite's own header: "CoWr".</summary>
    public const int ApplicationId = 0x436F5772;

    /// <summary>Number of migrations this program knows; kept in the file's header as its user version.</summary>
    public const int SchemaVersion = 11;

    private const int Corrupt = 11;
    private const int NotADatabase = 26;

    /// <summary>Makes a new shop and opens it. The file appears whole or not at all.</summary>
    /// <exception cref="ShopFileException">There is a file already, or none can be written there.</exception>
    public static async Task<ShopRecords> CreateAsync(
        string path,
        string shopName,
        TimeProvider? clock = null,
        CancellationToken cancel = default
    )
    {
        string making = $"{path}.{Guid.NewGuid():N}.making";
        try
        {
            if (File.Exists(path))
            {
                throw new ShopFileException($"{path}: there is a file already; a new shop needs a name of its own.");
            }

            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            await File.WriteAllBytesAsync(making, [], cancel);
            await FillAsync(making, shopName, (clock ?? TimeProvider.System).GetUtcNow(), cancel);
            File.Move(making, path, overwrite: false);
        }
        catch (Exception failure)
            when (failure is SqliteException or UnauthorizedAccessException or (IOException and not ShopFileException))
        {
            throw new ShopFileException($"{path}: a shop cannot be made here: {failure.Message}", failure);
        }
        finally
        {
            File.Delete(making);
        }

        return await OpenAsync(path, cancel);
    }

    /// <summary>Opens a shop; an older one is brought up to date first.</summary>
    /// <exception cref="ShopFileException">It is not there, is no shop, is damaged, or was written by a newer version.</exception>
    public static async Task<ShopRecords> OpenAsync(string path, CancellationToken cancel = default)
    {
        try
        {
            ShopHeader.Check(path);
            await CheckInsideAsync(path, cancel);
            bool mayWrite = MayWrite(path);
            string options = mayWrite
                ? ShopContextOptions.Working(path)
                : ShopContextOptions.Looking(path, alone: !File.Exists(path + "-wal"));
#pragma warning disable CA2000 // handed to the caller, or nothing was opened in it yet
            ShopRecords shop = new(new SqliteDatabase(path, options));
#pragma warning restore CA2000
            await using ShopContext context = shop.Open();
            if (!mayWrite)
            {
                return (await context.Database.GetPendingMigrationsAsync(cancel)).Any()
                    ? throw new ShopFileException(
                        $"{path}: this shop was made by an older version and must be brought up to date, but its file may only be read. "
                            + $"Make it writable, or copy it."
                    )
                    : shop;
            }

            if ((await context.Database.GetPendingMigrationsAsync(cancel)).Any())
            {
                await context.Database.MigrateAsync(cancel);
                await context.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)", cancel);
            }

            await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL", cancel); // a mended file may have another
            return shop;
        }
        catch (Exception failure)
            when (failure is SqliteException or UnauthorizedAccessException or (IOException and not ShopFileException)
                && StorageFault.Of(failure) is null
            )
        {
            throw new ShopFileException($"{path}: the shop's file cannot be read: {failure.Message} Nothing in it was changed.", failure);
        }
    }

    /// <summary>Removes a shop that was just made and could not be filled; a file that resists stays, empty.</summary>
    public static void RemoveEmpty(string path)
    {
        foreach (string ending in (string[])["", .. WriteAheadLog.Endings])
        {
            try
            {
                File.Delete(path + ending);
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                return; // an empty shop can be filled later
            }
        }
    }

    /// <summary>
    /// False for a file that is marked as read-only, lies on such a disk, or belongs to somebody else: then it can still be viewed.
    /// </summary>
    private static bool MayWrite(string path)
    {
        if (File.GetAttributes(path).HasFlag(FileAttributes.ReadOnly))
        {
            return false;
        }

        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
            return true;
        }
        catch (Exception refused) when (refused is UnauthorizedAccessException or IOException)
        {
            return false;
        }
    }

    private static async Task FillAsync(string path, string shopName, DateTimeOffset nowUtc, CancellationToken cancel)
    {
        await using SqliteDatabase database = new(path, ShopContextOptions.Working(path));
        await using ShopContext context = database.Open();
        await context.Database.ExecuteSqlRawAsync(
            string.Create(CultureInfo.InvariantCulture, $"PRAGMA application_id = {ApplicationId}"),
            cancel
        );
        await context.Database.MigrateAsync(cancel);
        context.Add(new ShopContext.ShopRow(1, shopName, nowUtc));
        await context.SaveChangesAsync(cancel);
        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL", cancel); // last: until here everything is in the one file
    }

    /// <summary>
    /// Looks inside through a connection that cannot write. Where no log lies beside the file, the connection makes none either.
    /// </summary>
    private static async Task CheckInsideAsync(string path, CancellationToken cancel)
    {
        bool alone = !File.Exists(path + "-wal");
        string? complaint = await ComplaintAsync(path, alone, cancel);
        if (complaint is not null && alone && File.Exists(path + "-wal"))
        {
            complaint = await ComplaintAsync(path, alone: false, cancel); // somebody opened it meanwhile
        }

        if (await HasForeignLogAsync(path, complaint is not null, cancel))
        {
            (string what, string toDo) = WriteAheadLog.Words(path);
            throw new ShopFileException($"{path}: {what} Nothing in it was changed. What to do: {toDo}.");
        }

        if (complaint is not null)
        {
            throw new ShopFileException(
                $"{path}: the shop's file is damaged ({complaint}). Nothing in it was changed. Keep it, and go back to a backup."
            );
        }
    }

    /// <summary>
    /// True when the log beside the file is another's: by its counts, or because the file is sound without it and damaged with it.
    /// </summary>
    internal static async Task<bool> HasForeignLogAsync(string path, bool isDamagedTogether, CancellationToken cancel) =>
        WriteAheadLog.IsForeign(path)
        || (isDamagedTogether && WriteAheadLog.BytesBeside(path) > 0 && await ComplaintAsync(path, alone: true, cancel) is null);

    private static async Task<string?> ComplaintAsync(string path, bool alone, CancellationToken cancel)
    {
        try
        {
            await using SqliteConnection connection = new(ShopContextOptions.Looking(path, alone));
            await connection.OpenAsync(cancel);
            await using SqliteCommand version = new("PRAGMA user_version", connection),
                check = new("PRAGMA quick_check(1)", connection);
            ShopHeader.RefuseNewer(path, Convert.ToInt32(await version.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture));
            string? answer = Convert.ToString(await check.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture);
            return answer == "ok" ? null : answer;
        }
        catch (SqliteException damage) when (damage.SqliteErrorCode is Corrupt or NotADatabase)
        {
            return damage.Message;
        }
    }
}
